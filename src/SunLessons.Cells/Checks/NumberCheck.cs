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

        // A clock time is kept in hours, but nobody thinks of half a minute as 0.0083 h.
        _tolerance = _unit.Kind == AnswerKind.Clock ? tolerance / 60 : tolerance;
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
            "My answer",
            $"My answer in {_unit.Asked}",
            _typed,
            _unit.Example,
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

    private protected override Part Field => _field;

    private protected override string AnswerText => _typed;

    /// <summary>The answer and where the slips lead, at the present place.</summary>
    public NumberProblem Problem() => NumberProblem.Of(_formula, _slips, _unit, _tolerance);

    internal override void Retire()
    {
        Lesson.PlaceMoved -= AskAgain;
        base.Retire();
    }

    private protected override Judgement Judge()
    {
        var input = AnswerParser.Read(_typed, _unit.Symbol);
        if (input.Value is not { } given)
        {
            return Judgement.Unread(input.Problem!);
        }

        NumberProblem problem;
        try
        {
            problem = Problem();
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            return Judgement.Unread(PlainSentence.Of(error));
        }

        var (state, paths) = problem.Judge(given);
        return (state, paths) switch
        {
            (CheckState.Right, _) => new(state, $"Right: {Say(problem.Answer)}."),
            (CheckState.Nearly, _) => new(state, "Nearly: the way looks right, but the number is a little off. Keep more decimals on the way and round only at the end."),
            (_, []) => new(state, "Not yet: no usual slip leads there. A hint stands below."),
            (_, [{ Slips.Count: 2 } pair]) => new(state, $"Not yet: two slips at once, {pair.Name}. {pair.Reply}", pair.Name, pair.Id),
            (_, [var single]) => new(state, $"Not yet: {single.Name}. {single.Reply}", single.Name, single.Id),
            _ => Either(state, paths),
        };
    }

    private static Judgement Either(CheckState state, IReadOnlyList<SlipPath> paths)
    {
        var names = string.Join(", or ", paths.Select(p => p.Name));
        return new(state, $"Not yet: at this place several slips lead to the same number: {names}. {string.Join(' ', paths.Select(p => p.Reply))}", names, string.Join('/', paths.Select(p => p.Id)));
    }

    private string Say(double value) => NumberProblem.Say(value, _unit, _unit.Kind == AnswerKind.Clock ? _tolerance * 60 : _tolerance);
}
