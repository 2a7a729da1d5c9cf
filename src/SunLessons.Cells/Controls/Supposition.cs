namespace SunLessons.Cells.Controls;

/// <summary>
/// A question asked as if controls stood elsewhere: while it is answered, they say the supposed positions on this thread and on no other. Nothing moves,
/// nothing is recorded, no figure follows.
/// </summary>
internal static class Supposition
{
    [ThreadStatic]
    private static IReadOnlyDictionary<Control, double>? _positions;

    /// <summary>Asks.</summary>
    /// <param name="positions">A number's value, the index of a choice, 1 or 0 for a switch.</param>
    /// <param name="question">Computes something from the controls, without waiting for another thread.</param>
    public static T Ask<T>(IReadOnlyDictionary<Control, double> positions, Func<T> question)
    {
        var before = _positions;
        _positions = positions;
        try
        {
            return question();
        }
        finally
        {
            _positions = before;
        }
    }

    /// <summary>Where a control is supposed to stand; null when nobody supposes anything about it.</summary>
    public static double? Of(Control control) => _positions is { } positions && positions.TryGetValue(control, out var position) ? position : null;
}
