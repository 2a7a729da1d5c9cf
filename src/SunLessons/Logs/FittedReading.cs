namespace SunLessons.Logs;

/// <summary>A reading after the fit.</summary>
/// <param name="Reading">The reading as it was compared.</param>
/// <param name="LeftMinutes">What the faults found leave unexplained, minutes: dial minus fit.</param>
/// <param name="Weight">How much it counts, above 0 to 1 (Huber).</param>
public sealed record FittedReading(LogResidual Reading, double LeftMinutes, double Weight)
{
    /// <summary>Whether it counts for less than half because it lies so far off; it is shown, never dropped.</summary>
    public bool IsWild => Weight < 0.5;
}
