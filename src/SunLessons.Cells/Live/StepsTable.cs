using SunLessons.Cells.Controls;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Live;

/// <summary>A chain of corrections as a table that follows its controls and the place.</summary>
public sealed class StepsTable : LiveThing
{
    private readonly string _caption;
    private readonly Func<StepsAnswer> _make;
    private readonly Part _part;
    private StepsAnswer _answer = new("", []);
    private string _problem = "";

    internal StepsTable(Lesson lesson, string key, string caption, Func<StepsAnswer> make, IReadOnlyList<Control> dependsOn)
        : base(lesson, key, dependsOn)
    {
        (_caption, _make) = (caption, make);
        Make();
        _part = Build.Html(Host, ToHtml(), "steps");
        _part.Set(("_sunlessons_key", key));
    }

    /// <summary>The rows as last computed: those of the only chain, or of all chains that fit, one after another.</summary>
    public IReadOnlyList<StepRow> Rows => [.. Volatile.Read(ref _answer).Chains.SelectMany(c => c)];

    /// <inheritdoc/>
    public override string PlainText
    {
        get
        {
            var answer = Volatile.Read(ref _answer);
            return string.Join('\n', answer.Chains.Select((chain, i) => $"{Caption(answer, i)}: {string.Join("; ", chain.Select(Said))}").Prepend(_problem).Prepend(answer.Sentence).Where(t => t.Length > 0));
        }
    }

    internal override Part MakeRoot() => _part;

    /// <summary>The table as HTML, as it stands now.</summary>
    public string ToHtml()
    {
        if (_problem.Length > 0)
        {
            return Html.Status(_problem, "problem");
        }

        var answer = _answer;
        var sentence = answer.Sentence.Length == 0 ? "" : Html.Status(answer.Sentence, answer.Chains.Count == 0 ? "problem" : "summary");
        return sentence + string.Concat(answer.Chains.Select((chain, i) => Table(Caption(answer, i), chain)));
    }

    private protected override void Compute()
    {
        Make();
        _part.Set(("value", ToHtml()));
    }

    private static string Said(StepRow row) => string.Join(' ', new[] { row.Name, row.Amount, row.Running.Length == 0 ? "" : Worded($"gives {row.Running}") }.Where(t => t.Length > 0));

    private string Caption(StepsAnswer answer, int chain) => answer.Chains.Count == 1 ? _caption : Worded($"{_caption}: answer {chain + 1} of {answer.Chains.Count}");

    private void Make()
    {
        try
        {
            Volatile.Write(ref _answer, _make());
            _problem = "";
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            Volatile.Write(ref _answer, new StepsAnswer("", []));
            _problem = PlainSentence.Of(error);
        }
    }

    private static string Table(string caption, IReadOnlyList<StepRow> rows)
    {
        var uncertain = rows.Any(r => r.Uncertainty.Length > 0);
        return Html.Table(
            caption,
            uncertain
                ? [Worded($"Step"), Worded($"Amount"), Worded($"In words"), Worded($"Standard uncertainty"), Worded($"Time now")]
                : [Worded($"Step"), Worded($"Amount"), Worded($"In words"), Worded($"Time now")],
            rows.Select(r => uncertain ? new[] { r.Name, r.Amount, r.Words, r.Uncertainty, r.Running } : [r.Name, r.Amount, r.Words, r.Running]),
            headedRows: true);
    }
}
