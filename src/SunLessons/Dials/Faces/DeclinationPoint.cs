namespace SunLessons.Dials.Faces;

/// <summary>A point that the shadow of the nodus passes.</summary>
/// <param name="HourAngle">The Sun's hour angle then.</param>
/// <param name="Declination">The Sun's declination then.</param>
/// <param name="Point">The place on the face, in nodus heights.</param>
public readonly record struct DeclinationPoint(HourAngle HourAngle, SolarDeclination Declination, FacePoint Point);
