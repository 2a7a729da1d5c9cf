using SunLessons.Cells.Live;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Trials;

/// <summary>
/// The experiment as a table: every control moved alone, the others held. It needs nobody to move anything, so it stands on paper too. It gives nothing
/// away: as long as a control is locked there are no trials. Computed for the learner's place.
/// </summary>
internal sealed class StoredTrials : LiveThing
{
    private static string Before => Worded($"Record your prediction first; then the stored trials stand here.");
    private readonly TrialTable _table;
    private readonly Lazy<Part> _part;
    private IReadOnlyList<Sweep>? _sweeps;

    public StoredTrials(Lesson lesson, TrialTable table)
        : base(lesson, table.Key + "-stored", [])
    {
        _table = table;
        // What is held and where trials are made may still be said after the table was made; shown, it is settled.
        _part = new Lazy<Part>(() =>
        {
            Make();
            return Build.Html(Host, Markup(), "stored-trials");
        });
        foreach (var input in table.Inputs)
        {
            input.Changed += Woken;
        }
    }

    public override string PlainText => string.Join('\n', (_sweeps ?? []).Select(sweep =>
        $"{sweep.Caption}: {string.Join("; ", sweep.Rows.Select(row => Worded($"{row.Inputs[0]} gives {string.Join(", ", row.Outcomes)}")))}"));

    internal override Part MakeRoot() => _part.Value;

    internal override void Retire()
    {
        base.Retire();
        foreach (var input in _table.Inputs)
        {
            input.Changed -= Woken;
        }
    }

    private protected override void Compute()
    {
        Make();
        _part.Value.Set(("value", Markup()));
    }

    private void Woken()
    {
        // A moved control changes nothing here; one that wakes does.
        if (_sweeps is null)
        {
            Touch();
        }
    }

    private void Make()
    {
        if (!_table.Inputs.Any(input => input.IsLocked))
        {
            _sweeps = _table.Sweeps();
        }
    }

    private string Markup()
    {
        var inside = _sweeps is null ? Html.Status(Before, "summary")
            : string.Concat(_sweeps.Select(sweep => Html.Table(sweep.Caption, [sweep.Moved.Label, .. sweep.Headings], sweep.Rows.Select(row => (IReadOnlyList<string>)[.. row.Inputs, .. row.Outcomes]), headedRows: true)));
        return $"<details><summary>{Html.E(Worded($"The same experiment as stored trials"))}</summary>{inside}</details>";
    }
}
