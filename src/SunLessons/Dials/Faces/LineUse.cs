namespace SunLessons.Dials.Faces;

/// <summary>Whether an hour line ever has a shadow on it.</summary>
public abstract record LineUse
{
    private LineUse()
    {
    }

    /// <summary>It is lit while the Sun's declination lies between two bounds.</summary>
    /// <param name="Least">The least declination.</param>
    /// <param name="Greatest">The greatest declination.</param>
    public sealed record Between(SolarDeclination Least, SolarDeclination Greatest) : LineUse;

    /// <summary>The Sun is below the horizon or behind the plate at that hour on every day of the year: leave the line off.</summary>
    public sealed record Never : LineUse;
}
