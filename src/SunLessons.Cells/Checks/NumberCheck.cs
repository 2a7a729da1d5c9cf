using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Checks;

/// <summary>A question with a number for an answer; the number, and those of the usual slips, are computed by the library.</summary>
public sealed class NumberCheck : Check
{
    private readonly AnswerUnit _unit;
    private readonly double _tolerance;
    private readonly Func<Way, double> _formula;
    private readonly IReadOnlyList<Slip> _slips;
    private readonly Part _field;
    private string _typed;

    internal NumberCheck(Lesson lesson, string key, Func<string> question, Func<Way, double> formula, bool follows, double tolerance, string unit, IReadOnlyList<Slip> slips, IReadOnlyList<string> hints, Func<string> solution)
        : base(lesson, key, question, hints, solution)
    {
        _unit = AnswerUnit.Of(unit);
        _tolerance = _unit.Tolerance(tolerance);
        if (!(tolerance > 0))
        {
            throw new ArgumentException($"Check '{key}' allows no difference at all; give a tolerance above 0, such as 0.5 for computed minutes.", nameof(tolerance));
        }

        (_formula, _slips, FollowsPlace) = (formula, slips, follows);
        if (slips.Select(s => s.Kind).Distinct().Count() != slips.Count)
        {
            throw new ArgumentException($"Check '{key}' declares a slip twice; each one has one reply.", nameof(slips));
        }

        if (!follows && Problem().Clashes() is { Count: > 0 } clashes)
        {
            throw new ArgumentException($"Check '{key}' cannot tell slips apart: {clashes[0]}");
        }

        _typed = KeptAnswer;
        _field = Build.Text(
            Host,
            Worded($"My answer"),
            Worded($"My answer in {_unit.AskedNow}"),
            _typed,
            _unit.ExampleNow,
            typed =>
            {
                _typed = typed;
                Typed();
            },
            submitted: () => Answered(counts: true));
        if (follows)
        {
            lesson.PlaceMoved += AskAgain;
        }

        if (WasJudged && _typed.Length > 0)
        {
            Answered(counts: false);
        }
    }

    /// <summary>Whether answer and slips are computed anew for each place of the learner.</summary>
    public bool FollowsPlace { get; }

    /// <summary>The slips that this question expects.</summary>
    public IReadOnlyList<Slip> Slips => _slips;

    /// <summary>What is asked for; see <see cref="AnswerParser.Read"/>.</summary>
    public string Unit => _unit.Symbol;

    /// <summary>How near an answer must come, in <see cref="Unit"/> (hours for a clock time).</summary>
    public double Tolerance => _tolerance;

    /// <summary>What an answer is, in words, such as <c>minutes of time</c>.</summary>
    public string Asked => _unit.AskedNow;

    /// <summary><see cref="Tolerance"/> with its unit; minutes for a clock time.</summary>
    public string ToleranceText => NumberReply.Difference(_tolerance, _unit);

    /// <summary>A number of this question as its replies write it, with its unit.</summary>
    public string Say(double value) => NumberReply.Say(value, _unit, _tolerance);

    private protected override Part Field => _field;

    private protected override string AnswerText => _typed;

    /// <summary>The answer and where the slips lead, at the present place.</summary>
    public NumberProblem Problem() => NumberProblem.Of(_formula, _slips, _unit, _tolerance);

    internal override void Retire()
    {
        Lesson.PlaceMoved -= AskAgain;
        base.Retire();
    }

    private protected override Judgement Judge() =>
        NumberReply.To(_typed, _unit, _tolerance, Problem, Worded($"Not yet: no usual slip leads there. A hint stands below."));
}
