namespace SunLessons.Dials;

/// <summary>
/// A dial on a flat plate that is meant to lie level, with a style that is meant to be parallel to the Earth's axis.
/// Design only: how and where it stands is a <see cref="DialStance"/> and a place.
/// </summary>
/// <remarks>
/// A northern dial (latitude above zero) has its style rising towards the plate's north, its noon line running north from the style's root and its numbers
/// running clockwise; on a southern dial the style rises towards the south and the numbers run anticlockwise.
/// Between the style's root and its tip only direction counts, so no length enters.
/// </remarks>
/// <param name="ScaleLatitude">The latitude that the hour lines were drawn for, north positive.</param>
/// <param name="StyleLatitude">
/// The latitude whose pole stands as high as this style over the plate, north positive. A sound dial has it equal to <paramref name="ScaleLatitude"/>.
/// </param>
public readonly record struct FlatDial(Latitude ScaleLatitude, Latitude StyleLatitude)
{
    /// <summary>The engraved hours, first and last, or null when the lines run all round the plate.</summary>
    public EngravedHours? Engraved { get; init; }

    /// <summary>A sound dial: style and hour lines made for one latitude.</summary>
    public static FlatDial For(Latitude latitude) => new(latitude, latitude);
}
