using System.Text.Json.Nodes;
using SunLessons.Cells.Controls;
using SunLessons.Cells.Parts;
using SunLessons.Figures;

namespace SunLessons.Cells.Live;

/// <summary>
/// A figure that follows its controls and the place. A page that draws figures gets the figure once and then changed columns; every other front
/// end gets a finished drawing with its sentence and table in a standard HTML widget.
/// </summary>
public sealed class LiveFigure : LiveThing
{
    private readonly Lock _gate = new();
    private readonly Func<Figure> _make;
    private readonly Part _part;
    private Figure? _figure;
    private string _problem = "";

    // What the page has drawn and what to change in it; null as long as it has no figure, or shows a problem instead.
    private IFigureChanges? _columns;

    internal LiveFigure(Lesson lesson, string key, Func<Figure> make, IReadOnlyList<Control> dependsOn)
        : base(lesson, key, dependsOn)
    {
        _make = make;
        (_figure, _problem) = Make();
        _part = new Part(Host, "HTMLModel", State(), custom: OnCustom);
    }

    /// <summary>The figure as last computed; null when it could not be.</summary>
    public Figure? Figure
    {
        get
        {
            lock (_gate)
            {
                return _figure;
            }
        }
    }

    /// <summary>Its sentence, or why there is none.</summary>
    public override string PlainText
    {
        get
        {
            lock (_gate)
            {
                return _figure?.Summary ?? _problem;
            }
        }
    }

    // Null where the page gets a finished drawing.
    private IFigurePen? Pen => Host.FrontEnd.DrawsFigures ? Host.Pen : null;

    /// <summary>The figure computed now, for whoever asks; nobody is told. Null when it cannot be.</summary>
    internal Figure? Afresh() => Make().Figure;

    internal override Part MakeRoot() => _part;

    internal override void Retire()
    {
        base.Retire();
        _part.Retire();
    }

    internal override void TellAgain()
    {
        lock (_gate)
        {
            _part.Set([.. State().Select(pair => (pair.Key, pair.Value))]);
            if (_figure is not null && Pen is { } pen)
            {
                TellWhole(_figure, pen);
            }
        }
    }

    private protected override void Compute()
    {
        var (figure, problem) = Make();
        lock (_gate)
        {
            var before = _figure;
            (_figure, _problem) = (figure, problem);
            if (Pen is not { } pen)
            {
                _part.Set(("value", Drawing()));
            }
            else if (figure is null)
            {
                _columns = null;
                _part.SendCustom(new JsonObject { ["problem"] = problem, ["summary"] = problem, ["alt"] = problem });
            }
            else if (_columns?.Next(figure) is { } columns)
            {
                if (columns.Count > 0 || before?.Summary != figure.Summary)
                {
                    _part.SendCustom(new JsonObject { ["columns"] = columns, ["summary"] = figure.Summary, ["alt"] = figure.Description });
                }
            }
            else
            {
                TellWhole(figure, pen);
            }
        }
    }

    // The state first, for pages that come later or that had no figure yet; the message for the page that has one.
    private void TellWhole(Figure figure, IFigurePen pen)
    {
        _columns = pen.After(figure);
        var tree = Tree(figure, pen);
        _part.Set(("_sunlessons_figure", tree), ("_sunlessons_summary", figure.Summary));
        _part.SendCustom(new JsonObject { ["figure"] = tree.DeepClone(), ["summary"] = figure.Summary, ["alt"] = figure.Description });
    }

    private static JsonObject Tree(Figure figure, IFigurePen pen)
    {
        var tree = pen.Whole(figure);
        tree["summary"] = figure.Summary;
        tree["alt"] = figure.Description;
        return tree;
    }

    private (Figure? Figure, string Problem) Make()
    {
        try
        {
            return (_make(), "");
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            return (null, PlainSentence.Of(error));
        }
    }

    private JsonObject State()
    {
        var state = new JsonObject { ["_sunlessons_role"] = "figure", ["_sunlessons_key"] = Key };
        if (Pen is { } pen)
        {
            // The text is what a page shows until it has drawn, and all that it shows when it cannot.
            state["value"] = Html.Status(PlainText, _figure is null ? "problem" : "summary");
            state["_sunlessons_figure"] = _figure is null ? null : Tree(_figure, pen);
            _columns = _figure is null ? null : pen.After(_figure);
            state["_sunlessons_summary"] = PlainText;
        }
        else
        {
            state["value"] = Drawing();
        }

        return state;
    }

    private string Drawing() => _figure is null
        ? Html.Status(_problem, "problem")
        : $"<figure class=\"sunlessons-figure\">{SvgWriter.Write(_figure, new SvgOptions { IdPrefix = "fig-" + Key })}"
            + $"<figcaption>{Html.Status(_figure.Summary, "summary")}</figcaption>"
            + $"<details><summary>{Html.E(Worded($"The numbers as a table"))}</summary>{_figure.Table.ToHtml()}</details></figure>";

    // The numbers travel only when somebody unfolds them.
    private void OnCustom(JsonObject content)
    {
        if (Json.Text(content["event"]) == "table" && Figure is { } figure)
        {
            _part.SendCustom(new JsonObject { ["table"] = figure.Table.ToHtml(), ["csv"] = figure.Table.ToCsv() });
        }
    }
}
