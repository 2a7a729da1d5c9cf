namespace SunLessons.Dials.Faces;

/// <summary>Ways to count hours from the horizon and not from noon.</summary>
public enum HorizonHours
{
    /// <summary>Equal hours, 24 to the day, counted from sunrise.</summary>
    SinceSunrise,

    /// <summary>Equal hours, 24 to the day, counted from the last sunset; 24 less the count is the time left until the next.</summary>
    SinceSunset,

    /// <summary>Unequal (temporary) hours: 12 to the daylight, long in summer and short in winter; 6 is noon.</summary>
    Unequal,
}
