using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using SunLessons.Cells.Controls;
using SunLessons.Cells.Live;
using SunLessons.Cells.Parts;
using SunLessons.Figures;

namespace SunLessons.Cells;

/// <content>The verbs that put things into a cell's output.</content>
public sealed partial class Lesson
{
    /// <summary>The MIME type of a number that the lesson's text quotes by name.</summary>
    public const string ValueMimeType = "application/vnd.sunlessons.value+json";

    /// <summary>Raised for each thing that a cell shows, in order.</summary>
    public event Action<object>? Displayed;

    private PlaceControl? _placeControl;
    private string? _placeShownWith;

    /// <summary>
    /// Shows things in the output of the running cell, one under the other: controls, figures, predictions, checks, sentences.
    /// Where no page tells the learner's place, its control comes first, once in a lesson.
    /// </summary>
    public void Show(params object?[] things)
    {
        ArgumentNullException.ThrowIfNull(things);
        var widgets = new List<Shown>();
        foreach (var thing in things)
        {
            if (thing is not null)
            {
                Displayed?.Invoke(thing);
            }

            if (thing is Shown shown)
            {
                widgets.Add(shown);
                continue;
            }

            ShowWidgets(widgets);
            widgets.Clear();
            Host.Display(Bundle(thing));
        }

        ShowWidgets(widgets);
    }

    /// <summary>Shows a number under a name, so that the lesson's text can quote it, and gives it back.</summary>
    /// <param name="name">The name that the text quotes: letters, digits and hyphens.</param>
    /// <param name="number">The number.</param>
    /// <param name="pattern">How it is written: <c>0.0 min</c>, <c>+0.0 min</c> for a sign always, <c>0°</c>, or <c>hh:mm</c> for hours as a clock time.</param>
    /// <exception cref="ArgumentException">The name or the pattern cannot be used, or the number is none.</exception>
    public double Value(string name, double number, string pattern)
    {
        if (!double.IsFinite(number))
        {
            throw new ArgumentException($"Value '{name}' is not a number, so it cannot be quoted. Say in the lesson why there is none.", nameof(number));
        }

        ShowValue(name, number, Written(number, pattern));
        return number;
    }

    /// <summary>Shows words under a name, such as a date or a town, so that the lesson's text can quote them, and gives them back.</summary>
    /// <exception cref="ArgumentException">The name cannot be used.</exception>
    public string Value(string name, string words)
    {
        ShowValue(name, words, words);
        return words;
    }

    private static string Written(double number, string pattern)
    {
        if (pattern.Contains("hh:mm", StringComparison.Ordinal))
        {
            return pattern.Replace("hh:mm", new Axis("", Kind: AxisKind.Clock).Say(number), StringComparison.Ordinal);
        }

        var match = NumberPattern().Match(pattern);
        if (!match.Success)
        {
            throw new ArgumentException($"The pattern '{pattern}' has no place for a number. Write one such as 0.0 min, +0.0 min, 0° or hh:mm.", nameof(pattern));
        }

        var decimals = match.Groups["decimals"].Length;
        var text = match.Groups["sign"].Length > 0 ? Axis.Signed(number, decimals) : Axis.Numeral(number, decimals);
        return pattern[..match.Index] + text + pattern[(match.Index + match.Length)..];
    }

    private Dictionary<string, JsonNode> Bundle(object? thing) => thing switch
    {
        Figure figure => Drawn(figure),
        DataTable table => new() { ["text/html"] = table.ToHtml(), ["text/plain"] = table.ToCsv() },
        _ => Sentence(Convert.ToString(thing, CultureInfo.InvariantCulture) ?? ""),
    };

    private Dictionary<string, JsonNode> Drawn(Figure figure)
    {
        var bundle = new Dictionary<string, JsonNode> { ["text/html"] = FigureHtml.Write(figure), ["text/plain"] = figure.Summary };
        if (Host.Pen is { } pen)
        {
            bundle[pen.MimeType] = pen.Whole(figure);
        }

        return bundle;
    }

    private static Dictionary<string, JsonNode> Sentence(string text) => new() { ["text/html"] = $"<p>{Html.E(text)}</p>", ["text/plain"] = text };

    [GeneratedRegex("(?<sign>\\+?)0(?:\\.(?<decimals>0+))?")]
    private static partial Regex NumberPattern();

    [GeneratedRegex("^[A-Za-z0-9]+(?:-[A-Za-z0-9]+)*$")]
    private static partial Regex ValueName();

    private void ShowValue(string name, JsonNode value, string text)
    {
        if (!ValueName().IsMatch(name))
        {
            throw new ArgumentException($"The name '{name}' cannot be quoted in a text. Write letters, digits and hyphens, such as vigo-zone-step.", nameof(name));
        }

        Host.Display(new Dictionary<string, JsonNode>
        {
            [ValueMimeType] = new JsonObject { ["name"] = name, ["value"] = value, ["text"] = text },
            ["text/plain"] = text,
        });
    }

    private void ShowWidgets(List<Shown> widgets)
    {
        if (widgets.Count == 0)
        {
            return;
        }

        if (NeedsPlace(widgets))
        {
            widgets = [PlaceControl(), .. widgets];
        }

        var root = widgets.Count == 1 ? widgets[0].Root : Build.Box(Host, "group", widgets.Select(w => w.Root));
        Host.Display(root.Channel, string.Join('\n', widgets.Select(w => w.PlainText)));
    }

    // Once in a lesson: with the first thing that follows the place, and again with that same thing when its cell is run again.
    private bool NeedsPlace(List<Shown> widgets)
    {
        if (widgets.Find(w => w is LiveThing or TownControl) is not { } first || widgets.Exists(w => w is PlaceControl))
        {
            return false;
        }

        lock (_gate)
        {
            if (_placeIsKnown || (_placeShownWith is not null && _placeShownWith != first.Key))
            {
                return false;
            }

            _placeShownWith = first.Key;
            return true;
        }
    }
}
