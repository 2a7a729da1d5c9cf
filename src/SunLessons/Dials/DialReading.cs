namespace SunLessons.Dials;

/// <summary>What a dial shows in a given light: either a time, or nothing, with the reason.</summary>
public abstract record DialReading
{
    private DialReading()
    {
    }

    /// <summary>The shadow of the style lies on the scale.</summary>
    /// <param name="Time">What the scale says.</param>
    /// <param name="ShadowClockwise">
    /// The angle on the plate from the noon line to the shadow, clockwise seen from above positive, −180° (excluded) to +180°.
    /// </param>
    public sealed record Shows(DialTime Time, Angle ShadowClockwise) : DialReading;

    /// <summary>The dial shows nothing.</summary>
    /// <param name="Why">The reason, for programs.</param>
    /// <param name="Sentence">The reason in one sentence, for people.</param>
    public sealed record Nothing(NoReading Why, string Sentence) : DialReading;
}
