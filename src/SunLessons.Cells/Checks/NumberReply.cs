using System.Globalization;
using SunLessons.Cells.Parts;
using SunLessons.Figures;

namespace SunLessons.Cells.Checks;

/// <summary>Reads a typed number, judges it and finds the words.</summary>
internal static class NumberReply
{
    /// <summary>Judges what was typed.</summary>
    /// <param name="typed">As it stands in the field.</param>
    /// <param name="unit">What is asked for.</param>
    /// <param name="tolerance">How near it must come, in the unit (hours for a clock time).</param>
    /// <param name="problem">Computes the answer and where slips lead.</param>
    /// <param name="unexplained">What to say when no slip leads there.</param>
    public static Judgement To(string typed, AnswerUnit unit, double tolerance, Func<NumberProblem> problem, string unexplained)
    {
        var input = AnswerParser.Read(typed, unit.Symbol);
        if (input.Value is not { } given)
        {
            return Judgement.Unread(input.Problem!);
        }

        NumberProblem known;
        try
        {
            known = problem();
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            return Judgement.Unread(PlainSentence.Of(error));
        }

        var (state, paths) = known.Judge(given);
        return (state, paths) switch
        {
            (CheckState.Right, _) => new(state, Worded($"Right: {Say(known.Answer, unit, tolerance)}.")),
            (CheckState.Nearly, _) => new(state, Worded($"Nearly: the way looks right, but the number is a little off. Keep more decimals on the way and round only at the end.")),
            (_, []) => new(state, unexplained),
            (_, [{ Slips.Count: 2 } pair]) => new(state, Worded($"Not yet: two slips at once, {pair.Name}. {pair.Reply}"), pair.Name, pair.Id),
            (_, [var single]) => new(state, Worded($"Not yet: {single.Name}. {single.Reply}"), single.Name, single.Id),
            _ => Either(state, paths),
        };
    }

    /// <summary>A number of that unit with as many decimals as the tolerance has meaning.</summary>
    public static string Say(double value, AnswerUnit unit, double tolerance)
    {
        // As many decimals as the tolerance has meaning: 0.5 asks for one, 1 for none.
        var decimals = Enumerable.Range(0, 6).First(d => d == 5 || tolerance >= 0.999 * Math.Pow(10, -d));
        return unit.Kind switch
        {
            AnswerKind.Clock => new Axis("", Kind: AxisKind.Clock).Say(value),
            AnswerKind.Latitude => Axis.Numeral(Math.Abs(value), decimals) + (value < 0 ? Worded($"° S") : Worded($"° N")),
            AnswerKind.Longitude => Axis.Numeral(Math.Abs(value), decimals) + (value < 0 ? Worded($"° W") : Worded($"° E")),
            AnswerKind.Angle => Axis.Numeral(value, decimals) + "°",
            _ => Axis.Numeral(value, decimals) + (unit.Symbol.Length == 0 ? "" : " " + unit.Symbol),
        };
    }

    /// <summary>A difference between two numbers of that unit, such as a tolerance.</summary>
    public static string Difference(double value, AnswerUnit unit) => unit.Kind switch
    {
        AnswerKind.Clock => Number(value * 60) + " min",
        AnswerKind.Latitude or AnswerKind.Longitude or AnswerKind.Angle => Number(value) + "°",
        _ => Number(value) + (unit.Symbol.Length == 0 ? "" : " " + unit.Symbol),
    };

    private static string Number(double value) => Numbered(Math.Round(value, 6).ToString(CultureInfo.InvariantCulture));

    private static Judgement Either(CheckState state, IReadOnlyList<SlipPath> paths)
    {
        var names = string.Join(Worded($", or "), paths.Select(p => p.Name));
        return new(state, Worded($"Not yet: at this place several slips lead to the same number: {names}. {string.Join(' ', paths.Select(p => p.Reply))}"), names, string.Join('/', paths.Select(p => p.Id)));
    }
}
