using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Checks;

/// <summary>A question with a number for an answer; the number, and those of the usual slips, are computed by the library.</summary>
public sealed class NumberCheck : Check
{
    private readonly AnswerUnit _unit;
    private readonly double _tolerance;
    private readonly Func<NumberProblem> _problem;
    private readonly Part _field;
    private readonly bool _follows;
    private string _typed;

    internal NumberCheck(Lesson lesson, string key, Func<string> question, Func<NumberProblem> problem, bool follows, double tolerance, string unit, IReadOnlyList<string> hints, Func<string> solution)
        : base(lesson, key, question, hints, solution)
    {
        _unit = AnswerUnit.Of(unit);

        // A clock time is kept in hours, but nobody thinks of half a minute as 0.0083 h.
        _tolerance = _unit.Kind == AnswerKind.Clock ? tolerance / 60 : tolerance;
        if (!(tolerance > 0))
        {
            throw new ArgumentException($"Check '{key}' allows no difference at all; give a tolerance above 0, such as 0.5 for computed minutes.", nameof(tolerance));
        }

        (_problem, _follows) = (problem, follows);
        if (!follows && problem().Clashes(_unit, _tolerance) is { Count: > 0 } clashes)
        {
            throw new ArgumentException($"Check '{key}' cannot tell slips apart: {clashes[0]}");
        }

        _typed = KeptAnswer;
        _field = Build.Text(Host, "My answer", $"My answer in {_unit.Asked}", _typed, _unit.Example, typed =>
        {
            _typed = typed;
            Typed();
        });
        if (follows)
        {
            lesson.PlaceMoved += AskAgain;
        }

        if (WasJudged && _typed.Length > 0)
        {
            Answered(counts: false);
        }
    }

    private protected override Part Field => _field;

    internal override void Retire()
    {
        Lesson.PlaceMoved -= AskAgain;
        base.Retire();
    }

    private protected override string AnswerText => _typed;

    private protected override (CheckState? State, string? PathName, string Reply) Judge()
    {
        var input = AnswerParser.Read(_typed, _unit.Symbol);
        if (input.Value is not { } given)
        {
            return (null, null, input.Problem!);
        }

        NumberProblem problem;
        try
        {
            problem = _follows ? _problem().WithoutClashes(_unit, _tolerance) : _problem();
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            return (null, null, PlainSentence.Of(error));
        }

        var (state, path) = problem.Judge(given, _unit, _tolerance);
        return state switch
        {
            CheckState.Right => (state, null, $"Right: {Say(problem.Answer)}."),
            CheckState.Nearly => (state, null, "Nearly: the way looks right, but the number is a little off. Keep more decimals on the way and round only at the end."),
            _ when path is not null => (state, path.Name, $"Not yet: {path.Name}. {path.Reply}"),
            _ => (state, null, "Not yet: no usual slip leads there. A hint stands below."),
        };
    }

    private string Say(double value) => NumberProblem.Say(value, _unit, _unit.Kind == AnswerKind.Clock ? _tolerance * 60 : _tolerance);
}
