namespace SunLessons.Magnetism;

/// <summary>One year on a <see cref="DriftCurve"/>.</summary>
/// <param name="DecimalYear">Decimal year.</param>
/// <param name="Declination">How far magnetic north lay east of true north, east positive.</param>
/// <param name="StandardUncertainty">Its uncertainty, as <see cref="NorthAnswer.Known.StandardUncertainty"/>.</param>
/// <param name="ModelName">The model that answered, such as <c>IGRF-14</c>.</param>
/// <param name="Zone">Whether a compass could be used at the place in that year.</param>
public readonly record struct DriftPoint(
    double DecimalYear,
    MagneticDeclination Declination,
    Angle StandardUncertainty,
    string ModelName,
    CompassZone Zone);
