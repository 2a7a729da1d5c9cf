namespace SunLessons.Logs;

/// <summary>An entry of a printed list beside the field model in the likeliest year.</summary>
/// <param name="Place">The entry.</param>
/// <param name="Off">Printed less modelled magnetic declination, east positive.</param>
/// <param name="StandardDeviation">What the model's error and the engraver's rounding allow together, one standard deviation.</param>
/// <param name="Agrees">False for an entry that had to be set aside before the rest fitted any year.</param>
public sealed record DatedEntry(ListedPlace Place, Angle Off, Angle StandardDeviation, bool Agrees);
