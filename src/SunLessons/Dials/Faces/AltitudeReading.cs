namespace SunLessons.Dials.Faces;

/// <summary>What a dial that tells the time by the Sun's altitude shows: always two times, or nothing, with the reason.</summary>
public abstract record AltitudeReading
{
    private AltitudeReading()
    {
    }

    /// <summary>The altitude occurs twice: the user must know whether it is before or after noon. At noon both are 12.</summary>
    /// <param name="Morning">The local apparent time before noon.</param>
    /// <param name="Afternoon">The local apparent time after noon.</param>
    public sealed record Twice(DialTime Morning, DialTime Afternoon) : AltitudeReading;

    /// <summary>The dial shows nothing.</summary>
    /// <param name="Why">The reason, for programs.</param>
    /// <param name="Sentence">The reason, for people.</param>
    public sealed record Nothing(NoReading Why, string Sentence) : AltitudeReading;
}
