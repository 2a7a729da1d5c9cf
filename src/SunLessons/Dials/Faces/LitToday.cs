namespace SunLessons.Dials.Faces;

/// <summary>When a face is lit on a day of one solar declination.</summary>
public abstract record LitToday
{
    private LitToday()
    {
    }

    /// <summary>Not at all.</summary>
    /// <param name="Why">Whether the Sun stays down or stays behind the plate.</param>
    /// <param name="Sentence">The reason, for people.</param>
    public sealed record Never(NoReading Why, string Sentence) : LitToday;

    /// <summary>All round: the Sun neither sets nor goes behind the plate.</summary>
    public sealed record AllDay : LitToday;

    /// <summary>In one or two stretches; two where the face looks away from the noon Sun, as a northern wall in a northern summer.</summary>
    /// <param name="Spans">One or two, in the order of the day.</param>
    public sealed record During(IReadOnlyList<LitSpan> Spans) : LitToday;
}
