namespace SunLessons.Readings;

/// <summary>What a reading says about the clock: one time, several that fit, or none.</summary>
public abstract record ClockReading
{
    private ClockReading()
    {
    }

    /// <summary>The one moment of the day at which the dial shows this.</summary>
    /// <param name="Chain">The way to the clock.</param>
    public sealed record One(ReadingChain Chain) : ClockReading;

    /// <summary>The dial shows this more than once that day; nothing is chosen.</summary>
    /// <param name="Chains">Every moment that fits, earliest first.</param>
    /// <param name="Sentence">One sentence that lists them and says how to tell them apart.</param>
    public sealed record Several(IReadOnlyList<ReadingChain> Chains, string Sentence) : ClockReading;

    /// <summary>The dial cannot have shown this that day.</summary>
    /// <param name="Why">The reason, for programs.</param>
    /// <param name="Sentence">What came, what is possible, what to write instead.</param>
    public sealed record None(NoClock Why, string Sentence) : ClockReading;
}
