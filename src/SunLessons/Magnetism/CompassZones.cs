namespace SunLessons.Magnetism;

/// <summary>The limits between the zones of <see cref="CompassZone"/>.</summary>
public static class CompassZones
{
    /// <summary>Below this horizontal intensity (nT) a compass is used with caution.</summary>
    public const double CautionBelowNanotesla = 6000.0;

    /// <summary>Below this horizontal intensity (nT) a compass is of no use.</summary>
    public const double BlackoutBelowNanotesla = 2000.0;

    /// <summary>The zone for a horizontal intensity in nanotesla, not negative.</summary>
    public static CompassZone For(double horizontalNanotesla) => horizontalNanotesla switch
    {
        < BlackoutBelowNanotesla => CompassZone.Blackout,
        < CautionBelowNanotesla => CompassZone.Caution,
        _ => CompassZone.Fine,
    };
}
