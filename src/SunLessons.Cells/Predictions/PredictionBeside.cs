using SunLessons.Cells.Controls;
using SunLessons.Cells.Live;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Predictions;

/// <summary>A recorded prediction beside what came out.</summary>
public sealed class PredictionBeside : LiveThing
{
    private const string Before = "Record your prediction first; then it stands here beside what comes out.";
    private readonly Prediction _prediction;
    private readonly Func<string> _outcome;
    private readonly Part _part;
    private string _text = "";

    internal PredictionBeside(Prediction prediction, Func<string> outcome, IReadOnlyList<Control> dependsOn)
        : base(prediction.Lesson, prediction.Key + "-beside", dependsOn)
    {
        (_prediction, _outcome) = (prediction, outcome);
        Make();
        _part = Build.Html(Host, Markup(), "beside");
        _part.Set(("_sunlessons_key", Key));
        prediction.Recorded += Touch;
    }

    /// <inheritdoc/>
    public override string PlainText => _prediction.IsRecorded ? $"You predicted: {_prediction.Answer}. It came out: {_text}." : Before;

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
            Volatile.Write(ref _text, _outcome());
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            Volatile.Write(ref _text, PlainSentence.Of(error));
        }
    }

    private string Markup() => _prediction.IsRecorded
        ? $"<div role=\"status\">{Html.Table("Prediction and outcome", ["You predicted", "It came out"], [[_prediction.Answer!, _text]], headedRows: false)}</div>"
        : Html.Status(Before, "summary");
}
