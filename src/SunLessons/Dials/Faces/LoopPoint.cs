using NodaTime;

namespace SunLessons.Dials.Faces;

/// <summary>A date's point of a looped hour line.</summary>
/// <param name="Date">The date of the zone's clock.</param>
/// <param name="Declination">The Sun's declination at that clock time.</param>
/// <param name="EquationOfTime">Apparent minus mean time then.</param>
/// <param name="HourAngle">The Sun's hour angle then.</param>
/// <param name="Shadow">Where the shadow of the nodus falls, or why it does not.</param>
public sealed record LoopPoint(
    LocalDate Date, SolarDeclination Declination, EquationOfTime EquationOfTime, HourAngle HourAngle, NodusShadow Shadow);
