namespace SunLessons.Readings;

/// <summary>Why a reading leads to no clock time.</summary>
public enum NoClock
{
    /// <summary>The Sun is below the horizon when a dial shows this.</summary>
    SunIsDown,

    /// <summary>The Sun is up, but at no moment does this dial, standing as it does, show this.</summary>
    NeverShown,

    /// <summary>The dial has no readable scale: a level dial for the equator, or style and scale of two hemispheres.</summary>
    DialHasNoScale,

    /// <summary>How the dial stood cannot be told: no field model for the date, or a field too weak for a compass.</summary>
    SettingUnknown,

    /// <summary>The date is outside the years for which the Sun's place is known, 1900 to 2100.</summary>
    OutsideYears,

    /// <summary>The date does not exist in that zone, or its noon does not.</summary>
    NoSuchDay,
}
