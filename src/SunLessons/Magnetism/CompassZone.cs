namespace SunLessons.Magnetism;

/// <summary>Whether a compass can be used at a place, by the horizontal intensity H that turns its needle (limits of the WMM2025 specification).</summary>
public enum CompassZone
{
    /// <summary>H is 6000 nT or more: a compass works.</summary>
    Fine,

    /// <summary>H is 2000 nT up to 6000 nT: a compass is sluggish and its declination uncertain; use with caution.</summary>
    Caution,

    /// <summary>H is below 2000 nT: a compass is of no use; find north by the Sun.</summary>
    Blackout,
}
