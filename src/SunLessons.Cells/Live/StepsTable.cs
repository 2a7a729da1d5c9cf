using SunLessons.Cells.Controls;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Live;

/// <summary>A chain of corrections as a table that follows its controls and the place.</summary>
public sealed class StepsTable : LiveThing
{
    private readonly string _caption;
    private readonly Func<IEnumerable<StepRow>> _make;
    private readonly Part _part;
    private IReadOnlyList<StepRow> _rows = [];
    private string _problem = "";

    internal StepsTable(Lesson lesson, string key, string caption, Func<IEnumerable<StepRow>> make, IReadOnlyList<Control> dependsOn)
        : base(lesson, key, dependsOn)
    {
        (_caption, _make) = (caption, make);
        Make();
        _part = Build.Html(Host, Markup(), "steps");
        _part.Set(("_sunlessons_key", key));
    }

    /// <summary>The rows as last computed.</summary>
    public IReadOnlyList<StepRow> Rows => Volatile.Read(ref _rows);

    /// <inheritdoc/>
    public override string PlainText => _problem.Length > 0
        ? _problem
        : $"{_caption}: {string.Join("; ", Rows.Select(r => string.Join(' ', new[] { r.Name, r.Amount, r.Running.Length == 0 ? "" : "gives " + r.Running }.Where(t => t.Length > 0))))}";

    internal override Part MakeRoot() => _part;

    private protected override void Compute()
    {
        Make();
        _part.Set(("value", Markup()));
    }

    private void Make()
    {
        try
        {
            Volatile.Write(ref _rows, _make().ToArray());
            _problem = "";
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            Volatile.Write(ref _rows, []);
            _problem = PlainSentence.Of(error);
        }
    }

    private string Markup()
    {
        if (_problem.Length > 0)
        {
            return Html.Status(_problem, "problem");
        }

        var uncertain = Rows.Any(r => r.Uncertainty.Length > 0);
        return Html.Table(
            _caption,
            uncertain ? ["Step", "Amount", "In words", "Standard uncertainty", "Time now"] : ["Step", "Amount", "In words", "Time now"],
            Rows.Select(r => uncertain ? new[] { r.Name, r.Amount, r.Words, r.Uncertainty, r.Running } : [r.Name, r.Amount, r.Words, r.Running]),
            headedRows: true);
    }
}
