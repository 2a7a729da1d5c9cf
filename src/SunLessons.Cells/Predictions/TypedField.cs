using SunLessons.Cells.Checks;
using SunLessons.Cells.Hosting;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Predictions;

/// <summary>A number.</summary>
internal sealed class TypedField : PredictionField
{
    private readonly AnswerUnit _unit;
    private readonly Part _field;
    private string _typed = "";

    public TypedField(IWidgetHost host, string question, AnswerUnit unit)
    {
        _unit = unit;
        _field = Build.Text(host, Worded($"My prediction"), question, "", unit.ExampleNow, typed => _typed = typed, submitted: Submit);
    }

    public override IReadOnlyList<Part> Parts => [_field];

    public override string Example => _unit.ExampleNow;

    public override PredictionAnswer Read()
    {
        var input = AnswerParser.Read(_typed, _unit.Symbol);
        return input.Value is { } number ? new PredictionAnswer(_typed.Trim(), [number]) : PredictionAnswer.Not(input.Problem!);
    }

    public override bool Restore(string answer)
    {
        if (AnswerParser.Read(answer, _unit.Symbol).Value is null)
        {
            return false;
        }

        _typed = answer;
        _field.Set(("value", answer));
        return true;
    }
}
