namespace SunLessons.Cells.Checks;

/// <summary>
/// One way through a sum: the right one, or one with a slip or two on it. The same formula gives the answer and every wrong number:
/// <c>way => 4 * (15 * zone - (way.Made(WestTakenAsPlus) ? -longitude : longitude))</c>.
/// </summary>
public sealed class Way
{
    private readonly IReadOnlyCollection<SlipKind> _slips;

    internal Way(params IReadOnlyCollection<SlipKind> slips) => _slips = slips;

    /// <summary>Whether this slip is made on the way.</summary>
    public bool Made(SlipKind kind) => _slips.Contains(kind);
}
