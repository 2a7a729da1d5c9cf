using System.Globalization;
using SunLessons.Figures.Layout;

namespace SunLessons.Figures;

/// <summary>
/// Draws a figure as SVG 1.1: one element with title and description for those who cannot see it, level words, a white ground, no script,
/// no style sheet, no outside address. The same figure always gives the same text: coordinates carry two decimals.
/// </summary>
public static class SvgWriter
{
    /// <summary>Draws a figure.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A size of the options lies outside its range.</exception>
    public static string Write(Figure figure, SvgOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(figure);
        options ??= new SvgOptions();
        Check(options.Width, 240, 4000, "Width");
        Check(options.Height, 200, 4000, "Height");
        Check(options.LetterSize, 8, 64, "Letter size");
        var frame = new PlotFrame(figure, options.Width, options.Height, options.LetterSize);
        return new SvgDrawing(frame, options).Text();
    }

    private static void Check(double value, double min, double max, string what)
    {
        if (!(value >= min && value <= max))
        {
            throw new ArgumentOutOfRangeException(
                nameof(value),
                string.Create(CultureInfo.InvariantCulture, $"{what} {value:0.##} px is outside {min:0} to {max:0} px. Give a size in CSS pixels."));
        }
    }
}
