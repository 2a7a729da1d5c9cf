namespace SunLessons.Readings;

/// <summary>What a dial should show at a clock time: one answer, two where the clock shows that time twice, or none.</summary>
public abstract record DialForecast
{
    private DialForecast()
    {
    }

    /// <summary>The dial shows this.</summary>
    /// <param name="Chain">The same chain as from the dial to the clock; its <see cref="ReadingChain.Shown"/> is what the dial should show.</param>
    public sealed record One(ReadingChain Chain) : DialForecast
    {
        /// <summary>What the dial should show.</summary>
        public DialTime Shows => Chain.Shown;
    }

    /// <summary>The clock shows that time twice, because it was moved back: each has its own answer where the dial shows anything.</summary>
    /// <param name="Earlier">The answer for the earlier moment.</param>
    /// <param name="Later">The answer for the later moment.</param>
    /// <param name="Sentence">One sentence that names both moments.</param>
    public sealed record Two(DialForecast Earlier, DialForecast Later, string Sentence) : DialForecast;

    /// <summary>The dial shows nothing then, or the clock never shows that time.</summary>
    /// <param name="Sentence">Why, and what to ask instead.</param>
    public sealed record None(string Sentence) : DialForecast;
}
