namespace SunLessons.Readings;

/// <summary>The steps from a dial to the clock, in the fixed order in which they are taken off.</summary>
public enum StepName
{
    /// <summary>The scale and style were made for another latitude.</summary>
    Scale,

    /// <summary>The dial does not stand level and true.</summary>
    Setting,

    /// <summary>The dial does not stand on the meridian of the zone's base time.</summary>
    Longitude,

    /// <summary>The Sun is not a good clock: the equation of time.</summary>
    Date,

    /// <summary>Daylight time.</summary>
    Law,
}
