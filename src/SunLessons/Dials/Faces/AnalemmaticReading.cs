namespace SunLessons.Dials.Faces;

/// <summary>What an analemmatic dial shows: one time or two, or nothing, with the reason.</summary>
public abstract record AnalemmaticReading
{
    private AnalemmaticReading()
    {
    }

    /// <summary>The shadow of the upright gnomon crosses the ellipse.</summary>
    /// <param name="Times">
    /// One local apparent time; two where the gnomon stands outside the ellipse (in the tropics, part of the year), in the order the shadow meets them. Nothing
    /// is chosen between them.
    /// </param>
    public sealed record Shows(IReadOnlyList<DialTime> Times) : AnalemmaticReading;

    /// <summary>The dial shows nothing.</summary>
    /// <param name="Why">The reason, for programs.</param>
    /// <param name="Sentence">The reason, for people.</param>
    public sealed record Nothing(NoReading Why, string Sentence) : AnalemmaticReading;
}
