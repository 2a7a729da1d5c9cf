using System.Globalization;

namespace SunLessons.Cells.Checks;

/// <summary>
/// A question's number, and the numbers to which its slips lead, alone and two at once: all by one formula from the same inputs.
/// </summary>
public sealed class NumberProblem
{
    // Within three tolerances an answer shows the right way and a rounding too early.
    private const double NearlyFactor = 3;
    private readonly AnswerUnit _unit;
    private readonly double _tolerance;

    private NumberProblem(double answer, IReadOnlyList<SlipPath> singles, AnswerUnit unit, double tolerance)
    {
        (Answer, Singles, _unit, _tolerance) = (answer, singles, unit, tolerance);
        Pairs = [];
    }

    /// <summary>The right number, in the unit of the check (hours for a clock time).</summary>
    public double Answer { get; }

    /// <summary>Where each slip alone leads to, in the order of the lesson.</summary>
    public IReadOnlyList<SlipPath> Singles { get; }

    /// <summary>The slips alone that lead elsewhere than to the answer: at some places one may lead to the answer all the same.</summary>
    public IReadOnlyList<SlipPath> Astray => [.. Singles.Where(path => _unit.Between(path.Value, Answer) > _tolerance)];

    /// <summary>Two slips at once, where their number is like no other: neither the answer nor a slip alone nor another pair.</summary>
    public IReadOnlyList<SlipPath> Pairs { get; private set; }

    /// <summary>Follows every slip to its end.</summary>
    internal static NumberProblem Of(Func<Way, double> formula, IReadOnlyList<Slip> slips, AnswerUnit unit, double tolerance)
    {
        var problem = new NumberProblem(formula(new Way()), [.. slips.Select(s => new SlipPath([s], formula(new Way(s.Kind))))], unit, tolerance);
        var pairs = new List<SlipPath>();
        for (var i = 0; i < slips.Count; i++)
        {
            for (var k = i + 1; k < slips.Count; k++)
            {
                pairs.Add(new SlipPath([slips[i], slips[k]], formula(new Way(slips[i].Kind, slips[k].Kind))));
            }
        }

        var ends = problem.Singles.Append(new SlipPath([], problem.Answer)).Concat(pairs).Where(p => double.IsFinite(p.Value)).ToArray();
        problem.Pairs = [.. ends.Where(p => p.Slips.Count == 2 && ends.All(other => ReferenceEquals(other, p) || unit.Between(other.Value, p.Value) > tolerance))];
        return problem;
    }

    /// <summary>Slips that one answer could mean beside another or the truth, as sentences; empty when all can be told apart.</summary>
    internal IReadOnlyList<string> Clashes()
    {
        (string Name, double Value)[] all = [("the right answer", Answer), .. Singles.Select(s => (s.Name, s.Value))];
        var clashes = new List<string>();
        for (var i = 0; i < all.Length; i++)
        {
            for (var k = i + 1; k < all.Length; k++)
            {
                if (!(_unit.Between(all[i].Value, all[k].Value) > _tolerance))
                {
                    clashes.Add(string.Create(
                        CultureInfo.InvariantCulture,
                        $"'{all[k].Name}' gives {all[k].Value:0.###} and '{all[i].Name}' gives {all[i].Value:0.###}, which is within the tolerance of {_tolerance:0.###}. Choose other numbers for the question or leave one out."));
                }
            }
        }

        return clashes;
    }

    /// <summary>
    /// Judges a number. The paths are what it may have come from: none that is known, one, or several that lead to the same number
    /// here (at a place where two slips agree, neither may be named alone).
    /// </summary>
    internal (CheckState State, IReadOnlyList<SlipPath> Paths) Judge(double given)
    {
        // A hair of slack, so that an answer exactly at the tolerance is right whatever the last binary digit says.
        var within = _tolerance * (1 + 1e-9);
        if (_unit.Between(given, Answer) <= within)
        {
            return (CheckState.Right, []);
        }

        SlipPath? Nearest(IEnumerable<SlipPath> paths) => paths.Where(p => _unit.Between(given, p.Value) <= within).MinBy(p => _unit.Between(given, p.Value));
        if (Nearest(Astray) is { } single)
        {
            return (CheckState.NotYet, [.. Astray.Where(p => _unit.Between(p.Value, single.Value) <= _tolerance)]);
        }

        if (_unit.Between(given, Answer) <= within * NearlyFactor)
        {
            return (CheckState.Nearly, []);
        }

        return (CheckState.NotYet, Nearest(Pairs) is { } pair ? [pair] : []);
    }
}
