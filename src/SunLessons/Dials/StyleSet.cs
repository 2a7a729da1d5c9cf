namespace SunLessons.Dials;

/// <summary>To what the style of a dial is set whose scale was made for another latitude.</summary>
public enum StyleSet
{
    /// <summary>To the latitude of the scale: dial and scale are one piece.</summary>
    ForScale,

    /// <summary>To the latitude of the place, whatever the scale: a folding style with a degree arc.</summary>
    ForPlace,
}
