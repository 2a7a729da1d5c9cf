namespace SunLessons.Sun;

/// <summary>How dark it is between day and night, by the depth of the Sun's centre below a level horizon, without air (Explanatory Supplement to the Astronomical Almanac).</summary>
public enum TwilightKind
{
    /// <summary>Down to 6° below: things outdoors are told apart without a lamp.</summary>
    Civil,

    /// <summary>Down to 12° below: the sea's horizon is still seen.</summary>
    Nautical,

    /// <summary>Down to 18° below: then the Sun lights the sky no more.</summary>
    Astronomical,
}
