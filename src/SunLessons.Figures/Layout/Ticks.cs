namespace SunLessons.Figures.Layout;

/// <summary>One tick of an axis: where, and its words.</summary>
internal readonly record struct Tick(double Value, string Text);

/// <summary>Ticks at round values: 1, 2 or 5 times a power of ten; whole parts of an hour; firsts of months; parts of a turn.</summary>
internal static class Ticks
{
    private static readonly double[] ClockSteps = [1.0 / 12, 1.0 / 6, 0.25, 0.5, 1, 2, 3, 4, 6, 12, 24];
    private static readonly double[] DegreeSteps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 45, 90, 180, 360];
    private static readonly double[] HourSteps = [0.1, 0.25, 0.5, 1, 2, 3, 6, 12, 24];
    private static readonly double[] BearingSteps = [5, 15, 30, 45, 90, 180];

    /// <summary>The step that gives no more than the given number of intervals.</summary>
    public static double Step(Axis axis, double min, double max, int most)
    {
        var least = (max - min) / Math.Max(1, most);
        var steps = axis.Kind switch
        {
            AxisKind.Clock => ClockSteps,
            AxisKind.Bearing => BearingSteps,
            AxisKind.Number when axis.Unit == "°" && max - min > 1 => DegreeSteps,
            AxisKind.Number when axis.Unit == "h" && max - min is > 1 and < 100 => HourSteps,
            _ => null,
        };
        if (steps is not null)
        {
            // A hair of slack: 12 hours in 6 steps must take 2 hours although the division may come out a last digit above 2.
            var found = Array.Find(steps, s => s >= least * (1 - 1e-9));
            return found > 0 ? found : steps[^1];
        }

        var power = Math.Pow(10, Math.Floor(Math.Log10(least)));
        var lead = least / power * (1 - 1e-9);
        return (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10) * power;
    }

    /// <summary>The ticks between two ends.</summary>
    public static IReadOnlyList<Tick> Between(Axis axis, double min, double max, int most)
    {
        if (axis.Kind == AxisKind.Names)
        {
            return [.. axis.Names.Select((name, i) => new Tick(i, name)).Where(t => t.Value >= min && t.Value <= max)];
        }

        if (axis.Kind == AxisKind.DayOfYear && max - min > 70)
        {
            var months = Axis.Months.Where(m => m.Day >= min && m.Day <= max).ToArray();
            var every = new[] { 1, 2, 3, 6 }.First(e => months.Length <= most * e || e == 6);
            return [.. months.Where((_, i) => i % every == 0).Select(m => new Tick(m.Day, m.Name))];
        }

        var step = axis.Kind == AxisKind.DayOfYear ? Math.Max(1, Step(axis, min, max, most)) : Step(axis, min, max, most);
        var decimals = Math.Max(0, -(int)Math.Floor(Math.Log10(step) + 1e-9));
        var ticks = new List<Tick>();
        for (var k = Math.Ceiling(min / step - 1e-6); k * step <= max + step * 1e-6; k++)
        {
            ticks.Add(new Tick(k * step, axis.Write(k * step, decimals)));
        }

        return ticks;
    }
}
