using SunLessons.Cells.Controls;
using SunLessons.Cells.Live;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Predictions;

/// <summary>A recorded prediction beside what came out.</summary>
public sealed class PredictionBeside : LiveThing
{
    private static string Before => Worded($"Record your prediction first; then it stands here beside what comes out.");
    private readonly Prediction _prediction;
    private readonly IReadOnlyList<string> _heads;
    private readonly Func<IReadOnlyList<IReadOnlyList<string>>> _make;
    private readonly Part _part;
    private IReadOnlyList<IReadOnlyList<string>> _rows = [];
    private string _problem = "";

    internal PredictionBeside(Prediction prediction, IReadOnlyList<string> heads, Func<IReadOnlyList<IReadOnlyList<string>>> rows, IReadOnlyList<Control> dependsOn)
        : base(prediction.Lesson, prediction.Key + "-beside", dependsOn)
    {
        (_prediction, _heads, _make) = (prediction, heads, rows);
        Make();
        _part = Build.Html(Host, Markup(), "beside");
        _part.Set(("_sunlessons_key", Key));
        prediction.Recorded += Touch;
    }

    /// <summary>The question that was predicted.</summary>
    public string Question => _prediction.Question;

    /// <summary>What came out: a cell for a choice or a number, a row a point for a sketch; empty before the prediction is recorded.</summary>
    public IReadOnlyList<string> Outcomes => [.. Volatile.Read(ref _rows).Select(row => row[^1])];

    /// <inheritdoc/>
    public override string PlainText => !_prediction.IsRecorded ? Before
        : _problem.Length > 0 ? _problem
        : string.Join(' ', _rows.Select(row => string.Join(" ", _heads.Zip(row, (head, cell) => $"{head}: {cell}."))));

    internal override Part MakeRoot() => _part;

    internal override void Retire()
    {
        _prediction.Recorded -= Touch;
        base.Retire();
    }

    private protected override void Compute()
    {
        Make();
        _part.Set(("value", Markup()));
    }

    private void Make()
    {
        if (!_prediction.IsRecorded)
        {
            return;
        }

        try
        {
            Volatile.Write(ref _rows, _make());
            Volatile.Write(ref _problem, "");
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            Volatile.Write(ref _problem, PlainSentence.Of(error));
        }
    }

    private string Markup() => !_prediction.IsRecorded ? Html.Status(Before, "summary")
        : _problem.Length > 0 ? Html.Status(_problem, "problem")
        : $"<div role=\"status\">{Html.Table(_prediction.Question, _heads, _rows, headedRows: _heads.Count > 2)}</div>";
}
