namespace SunLessons.Dials;

/// <summary>Why a dial shows nothing.</summary>
public enum NoReading
{
    /// <summary>The centre of the Sun stands on or below the level horizon (air left out).</summary>
    SunBelowHorizon,

    /// <summary>The Sun is up but shines on the plate's back, or along its face.</summary>
    SunBehindPlate,

    /// <summary>The style, or the style that the scale was drawn for, lies along the plate: a level dial for the equator has no hour lines.</summary>
    StyleParallelToPlate,

    /// <summary>Style and scale were made for different hemispheres: the style would run into the plate.</summary>
    StyleUnderPlate,

    /// <summary>The shadow falls outside the engraved hours.</summary>
    OffTheScale,
}
