namespace SunLessons.Dials.Planning;

/// <summary>A choice of fixed latitude scales for a range of latitudes. Immutable.</summary>
/// <param name="Scales">The scales, the nearest to the equator first; their bands join and cover the range.</param>
public sealed record ScalePlan(IReadOnlyList<PlannedScale> Scales)
{
    /// <summary>The worst error anywhere in the range when each place uses the scale of its band, minutes without sign.</summary>
    public double WorstMinutes => Scales.Max(scale => scale.WorstMinutes);
}
