using SunLessons.Cells.Checks;

namespace SunLessons.Cells.Worked;

/// <summary>One step of a worked example.</summary>
/// <param name="Words">What is worked out, such as <c>the meridian for which the clock is fair</c>.</param>
/// <param name="Formula">Computes it; asks for slips where a blank step expects any.</param>
/// <param name="Tolerance">How near an answer must come, in <paramref name="Unit"/> (minutes for a clock time); above 0.</param>
/// <param name="Unit">What is asked for; see <see cref="AnswerParser.Read"/>.</param>
/// <param name="Why">Why the step is as it is, in a sentence: shown with the step, and after a blank one was filled.</param>
/// <param name="Slips">The slips that a blank step expects.</param>
/// <param name="IsIdea">Whether this step carries the idea of the lesson: people learn most about the step that they fill in first.</param>
/// <param name="IsSigned">Whether a plus is written: for amounts to add or take away.</param>
public sealed record WorkedLine(string Words, Func<Way, double> Formula, double Tolerance, string Unit, string Why, IReadOnlyList<Slip> Slips, bool IsIdea, bool IsSigned)
{
    private AnswerUnit Asked => AnswerUnit.Of(Unit);

    /// <summary>The step's number as a reader sees it.</summary>
    public string Text
    {
        get
        {
            var value = Formula(new Way());
            var text = NumberReply.Say(value, Asked, Asked.Tolerance(Tolerance));
            return IsSigned && value > 0 ? "+" + text : text;
        }
    }

    /// <summary>An example of how a number of this step is typed.</summary>
    internal string Example => Asked.ExampleNow;

    internal Judgement Judge(string typed) => NumberReply.To(
        typed,
        Asked,
        Asked.Tolerance(Tolerance),
        () => NumberProblem.Of(Formula, Slips, Asked, Asked.Tolerance(Tolerance)),
        Worded($"Not yet: look at this step in the version above, and put the other numbers in."));
}
