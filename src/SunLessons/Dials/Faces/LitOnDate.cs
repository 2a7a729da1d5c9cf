using NodaTime;

namespace SunLessons.Dials.Faces;

/// <summary>When a face is lit on a date.</summary>
/// <param name="Date">The date by local mean time.</param>
/// <param name="Declination">The Sun's declination at mean noon, kept for the day: it moves by up to 0.4° in one.</param>
/// <param name="Lit">When the face is lit.</param>
public sealed record LitOnDate(LocalDate Date, SolarDeclination Declination, LitToday Lit);
