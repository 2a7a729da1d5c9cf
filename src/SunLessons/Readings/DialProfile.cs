using SunLessons.Dials;
using SunLessons.Dials.Faces;

namespace SunLessons.Readings;

/// <summary>What is known of a dial: what its scale was made for, to what its style is set, how it stands. Immutable.</summary>
public sealed record DialProfile
{
    /// <summary>A dial made for the place it stands in, level and true as far as is known. This is what a reading means when nothing else is said.</summary>
    public static DialProfile Faultless { get; } = new();

    /// <summary>
    /// How the plate leans and looks by its design, such as <c>Face.VerticalSouth</c>; null for a level plate. Of a face the sizes of the doubts are not known here:
    /// only reading the plate, the shadow's edge, place, air and a stated doubt of its twist are counted, and the answer says so.
    /// </summary>
    public Face? Face { get; init; }

    /// <summary>The latitude its scale was made for, north positive; null means the place's own.</summary>
    public Latitude? ScaleLatitude { get; init; }

    /// <summary>To what the style of a level plate is set when the scale is not the place's own.</summary>
    public StyleSet Style { get; init; } = StyleSet.ForScale;

    /// <summary>How the dial was set up.</summary>
    public DialSetting Setting { get; init; } = new DialSetting.TakenAsRight();

    /// <summary>
    /// Whether the date's correction is worked by hand from a table of whole minutes. The amount here is computed all the same; only its doubt grows.
    /// </summary>
    public bool DateByTable { get; init; }

    /// <summary>
    /// For a dial that carries scales so many degrees apart, of which the nearest to the place is used WITHOUT correcting for the rest:
    /// the doubt of that, up to half the spacing either way. Null when the scale is known and corrected for, as is better.
    /// </summary>
    public Angle? NearestOfScalesApart { get; init; }

    /// <summary>The design of a level plate when it stands at a latitude.</summary>
    public FlatDial DialAt(Latitude place)
    {
        var scale = ScaleLatitude ?? place;
        return new FlatDial(scale, Style == StyleSet.ForPlace ? place : scale);
    }

    internal PlateDial PlateAt(Latitude place) => new(DialAt(place), Face is { } face ? new FaceDial(face, ScaleLatitude ?? place) : null);
}
