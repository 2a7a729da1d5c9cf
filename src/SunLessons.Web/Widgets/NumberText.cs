using System.Globalization;
using SunLessons.Words;

namespace SunLessons.Web.Widgets;

/// <summary>Numbers as they stand in a field: written with as many decimals as the step has, read with a decimal comma or point.</summary>
public static class NumberText
{
    /// <summary>Writes a value with the step's decimals; a true minus sign is for reading, the field keeps the plain one.</summary>
    public static string Write(double value, double step, LanguageCulture culture) =>
        value.ToString(step > 0 ? "0." + new string('#', Decimals(step)) : "0.######", culture);

    /// <summary>Reads a typed number within bounds, or says in one sentence what is allowed.</summary>
    public static (double? Value, string? Problem) Read(string text, double low, double high, string name, LanguageCulture culture)
    {
        var words = culture.Words;
        var plain = text.Trim().Replace('\u2212', '-').Replace(',', '.');
        var allowed = words.Say("number.range", Write(low, 0, culture), Write(high, 0, culture));
        if (!double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value))
        {
            return (null, words.Say("number.none", text.Trim(), name, allowed, Write((low + high) / 2.0, 0, culture)));
        }

        return value < low || value > high
            ? (null, words.Say("number.outside", Write(value, 0, culture), allowed, name))
            : (value, null);
    }

    /// <summary>The nearest value on the grid of steps that starts at the lower bound, kept within the bounds.</summary>
    public static double OnGrid(double value, double low, double high, double step)
    {
        if (step <= 0)
        {
            return Math.Clamp(value, low, high);
        }

        var stepped = low + Math.Round((value - low) / step) * step;
        // 0.1 added many times drifts in binary: the decimals of the step are the ones meant.
        return Math.Clamp(Math.Round(stepped, Math.Min(15, Decimals(step) + 1)), low, high);
    }

    private static int Decimals(double step)
    {
        var text = step.ToString("0.########", CultureInfo.InvariantCulture);
        var dot = text.IndexOf('.', StringComparison.Ordinal);
        return dot < 0 ? 0 : text.Length - dot - 1;
    }
}
