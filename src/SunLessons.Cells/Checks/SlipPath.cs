namespace SunLessons.Cells.Checks;

/// <summary>Where a slip, or two at once, lead to.</summary>
/// <param name="Slips">One slip or two.</param>
/// <param name="Value">The number, in the unit of the check.</param>
public sealed record SlipPath(IReadOnlyList<Slip> Slips, double Value)
{
    /// <summary>Its name in a record: <c>W6</c>, or <c>W6+W15</c> for two at once.</summary>
    public string Id => string.Join('+', Slips.Select(s => s.Kind.Id));

    /// <summary>What went wrong, in a few words.</summary>
    public string Name => string.Join(Worded($" and "), Slips.Select(s => Translated(s.Kind.Name)));

    /// <summary>What a learner who went this way is told.</summary>
    public string Reply => string.Join(' ', Slips.Select(s => s.Reply));
}
