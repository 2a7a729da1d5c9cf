using System.Globalization;
using SunLessons.Figures;

namespace SunLessons.Cells.Checks;

/// <summary>A question's number, how near an answer must come, and the slips that can be told from it and from each other.</summary>
/// <param name="Answer">The right number, in the unit of the check (hours for a clock time).</param>
/// <param name="WrongPaths">The usual slips.</param>
public sealed record NumberProblem(double Answer, IReadOnlyList<WrongPath> WrongPaths)
{
    // Within three tolerances an answer shows the right way and a rounding too early.
    private const double NearlyFactor = 3;

    /// <summary>Pairs that one answer could mean both of, as sentences; empty when all can be told apart.</summary>
    internal IReadOnlyList<string> Clashes(AnswerUnit unit, double tolerance)
    {
        var all = WrongPaths.Prepend(new WrongPath("the right answer", Answer, "")).ToArray();
        var clashes = new List<string>();
        for (var i = 0; i < all.Length; i++)
        {
            for (var k = i + 1; k < all.Length; k++)
            {
                var apart = unit.Between(all[i].Value, all[k].Value);
                if (!(apart > tolerance))
                {
                    clashes.Add(string.Create(
                        CultureInfo.InvariantCulture,
                        $"'{all[k].Name}' gives {all[k].Value:0.###} and '{all[i].Name}' gives {all[i].Value:0.###}, which is within the tolerance of {tolerance:0.###}. Choose other numbers for the question or leave one out."));
                }
            }
        }

        return clashes;
    }

    /// <summary>The same problem without the slips that cannot be told from the truth or from an earlier slip at this place.</summary>
    internal NumberProblem WithoutClashes(AnswerUnit unit, double tolerance)
    {
        var kept = new List<WrongPath>();
        foreach (var path in WrongPaths)
        {
            if (unit.Between(path.Value, Answer) > tolerance && kept.TrueForAll(k => unit.Between(k.Value, path.Value) > tolerance))
            {
                kept.Add(path);
            }
        }

        return this with { WrongPaths = kept };
    }

    /// <summary>Judges a number; the wrong path is the nearest one within the tolerance, if there is one.</summary>
    internal (CheckState State, WrongPath? Path) Judge(double given, AnswerUnit unit, double tolerance)
    {
        // A hair of slack, so that an answer exactly at the tolerance is right whatever the last binary digit says.
        var within = tolerance * (1 + 1e-9);
        if (unit.Between(given, Answer) <= within)
        {
            return (CheckState.Right, null);
        }

        var path = WrongPaths.Where(p => unit.Between(given, p.Value) <= within).MinBy(p => unit.Between(given, p.Value));
        if (path is not null)
        {
            return (CheckState.NotYet, path);
        }

        return (unit.Between(given, Answer) <= within * NearlyFactor ? CheckState.Nearly : CheckState.NotYet, null);
    }

    internal static string Say(double value, AnswerUnit unit, double tolerance)
    {
        // As many decimals as the tolerance has meaning: 0.5 asks for one, 1 for none.
        var decimals = Enumerable.Range(0, 6).First(d => d == 5 || tolerance >= 0.999 * Math.Pow(10, -d));
        return unit.Kind switch
        {
            AnswerKind.Clock => new Axis("", Kind: AxisKind.Clock).Say(value),
            AnswerKind.Latitude => Axis.Numeral(Math.Abs(value), decimals) + (value < 0 ? "° S" : "° N"),
            AnswerKind.Longitude => Axis.Numeral(Math.Abs(value), decimals) + (value < 0 ? "° W" : "° E"),
            AnswerKind.Angle => Axis.Numeral(value, decimals) + "°",
            _ => Axis.Numeral(value, decimals) + (unit.Symbol.Length == 0 ? "" : " " + unit.Symbol),
        };
    }
}
