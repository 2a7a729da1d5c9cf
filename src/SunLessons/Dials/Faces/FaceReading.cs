namespace SunLessons.Dials.Faces;

/// <summary>What a dial on a face shows: a time, or nothing, with the reason.</summary>
public abstract record FaceReading
{
    private FaceReading()
    {
    }

    /// <summary>The style's shadow lies on the face.</summary>
    /// <param name="Time">What the hour lines say there: local apparent time for a sound dial.</param>
    public sealed record Shows(DialTime Time) : FaceReading;

    /// <summary>The dial shows nothing.</summary>
    /// <param name="Why">The reason, for programs.</param>
    /// <param name="Sentence">The reason, for people.</param>
    public sealed record Nothing(NoReading Why, string Sentence) : FaceReading;
}
