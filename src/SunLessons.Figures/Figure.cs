using System.Collections.Immutable;

namespace SunLessons.Figures;

/// <summary>
/// A figure as one immutable value: what is drawn, and how it is said in words. It knows nothing of pages or paper; writers draw it.
/// Every verb gives a new figure and leaves the old one as it was.
/// </summary>
/// <param name="Title">The heading.</param>
/// <param name="X">The horizontal axis.</param>
/// <param name="Y">The vertical axis.</param>
public sealed record Figure(string Title, Axis X, Axis Y)
{
    private readonly string? _description;
    private readonly string? _summary;
    private readonly bool _showsAxes = true;

    /// <summary>What is drawn, in order.</summary>
    public ImmutableArray<Series> Series { get; init; } = [];

    /// <summary>Words at points.</summary>
    public ImmutableArray<Note> Notes { get; init; } = [];

    /// <summary>Reference lines.</summary>
    public ImmutableArray<Mark> Marks { get; init; } = [];

    /// <summary>Whether one unit is as long across as it is up: for plates, plans and fans.</summary>
    public bool EqualScales { get; init; }

    /// <summary>Whether frame, ticks and axis titles are drawn; a plate does without, and so does a figure that has nothing to show yet.</summary>
    public bool ShowsAxes
    {
        get => _showsAxes && !IsEmpty;
        init => _showsAxes = value;
    }

    /// <summary>Whether there is nothing to show yet: no series, no mark, no note.</summary>
    public bool IsEmpty => Series.Length == 0 && Notes.Length == 0 && Marks.Length == 0;

    /// <summary>The short alternative text: kind of figure, axes, what it shows. Made from the figure when nobody wrote one.</summary>
    public string Description
    {
        get => _description ?? FigureWords.Describe(this);
        init => _description = value;
    }

    /// <summary>One or two sentences with the numbers of this very figure. Made from the figure when nobody wrote one.</summary>
    public string Summary
    {
        get => _summary ?? FigureWords.Summarise(this);
        init => _summary = value;
    }

    /// <summary>The numbers of the figure as a table.</summary>
    public DataTable Table => DataTable.Of(this);

    /// <summary>Begins a figure with a heading.</summary>
    public static Figure Titled(string title) => new(title, new Axis("x"), new Axis("y"));

    /// <summary>Says what runs from left to right.</summary>
    public Figure Across(string label, string unit = "", double? from = null, double? to = null) =>
        this with { X = Checked(new Axis(label, unit, from, to)) };

    /// <summary>Says what runs from left to right.</summary>
    public Figure Across(Axis axis) => this with { X = Checked(axis) };

    /// <summary>Lets clock times, in hours, run from left to right.</summary>
    public Figure AcrossClock(string label, double from, double to) => this with { X = Checked(new Axis(label, "", from, to, AxisKind.Clock)) };

    /// <summary>Lets the days of a 365-day year run from left to right.</summary>
    public Figure AcrossYear(string label = "Date") => this with { X = new Axis(Translated(label), "", 1, 365, AxisKind.DayOfYear) };

    /// <summary>Lets names stand along the bottom: the first belongs to position 0.</summary>
    public Figure AcrossNames(string label, IEnumerable<string> names) => this with { X = new Axis(label, "", Kind: AxisKind.Names) { Names = [.. names] } };

    /// <summary>Says what runs from bottom to top.</summary>
    public Figure Up(string label, string unit = "", double? from = null, double? to = null) =>
        this with { Y = Checked(new Axis(label, unit, from, to)) };

    /// <summary>Says what runs from bottom to top.</summary>
    public Figure Up(Axis axis) => this with { Y = Checked(axis) };

    /// <summary>Lets clock times, in hours, run from bottom to top.</summary>
    public Figure UpClock(string label, double? from = null, double? to = null) => this with { Y = Checked(new Axis(label, "", from, to, AxisKind.Clock)) };

    /// <summary>Adds a line.</summary>
    /// <exception cref="ArgumentException">The lists have different lengths.</exception>
    public Figure Line(string name, IEnumerable<double> x, IEnumerable<double> y, Ink? ink = null, LineStyle? line = null, MarkerShape? marker = null, string? label = null, bool strong = false) =>
        With(Figures.Series.Of(name, x, y) with { Ink = ink, Line = line, Marker = marker, Label = label, Strong = strong });

    /// <summary>Adds the line of a formula, taken at evenly spaced positions.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 2 positions.</exception>
    public Figure Curve(string name, double from, double to, Func<double, double> formula, int points = 97, Ink? ink = null, LineStyle? line = null, string? label = null, bool strong = false)
    {
        ArgumentNullException.ThrowIfNull(formula);
        if (points < 2)
        {
            throw new ArgumentOutOfRangeException(nameof(points), $"A curve of {points} points cannot be drawn; give at least 2.");
        }

        var x = Enumerable.Range(0, points).Select(i => from + (to - from) * i / (points - 1)).ToArray();
        return Line(name, x, x.Select(formula), ink, line, label: label, strong: strong);
    }

    /// <summary>Adds markers without a line.</summary>
    /// <exception cref="ArgumentException">The lists have different lengths.</exception>
    public Figure Points(string name, IEnumerable<double> x, IEnumerable<double> y, Ink? ink = null, MarkerShape? marker = null, string? label = null, bool strong = false) =>
        With(Figures.Series.Of(name, x, y, SeriesKind.Points) with { Ink = ink, Marker = marker, Label = label, Strong = strong });

    /// <summary>Adds one marker.</summary>
    public Figure Point(string name, double x, double y, Ink? ink = null, MarkerShape? marker = null, string? label = null) =>
        Points(name, [x], [y], ink, marker, label, strong: true);

    /// <summary>Adds bars from zero.</summary>
    /// <exception cref="ArgumentException">The lists have different lengths.</exception>
    public Figure Bars(string name, IEnumerable<double> x, IEnumerable<double> y, Ink? ink = null, string? label = "") =>
        With(Figures.Series.Of(name, x, y, SeriesKind.Bars) with { Ink = ink, Label = label });

    /// <summary>Adds a line with the space down to zero lightly filled.</summary>
    /// <exception cref="ArgumentException">The lists have different lengths.</exception>
    public Figure Area(string name, IEnumerable<double> x, IEnumerable<double> y, Ink? ink = null, string? label = null) =>
        With(Figures.Series.Of(name, x, y, SeriesKind.Area) with { Ink = ink, Label = label });

    /// <summary>Adds a closed outline, lightly filled.</summary>
    /// <exception cref="ArgumentException">The lists have different lengths.</exception>
    public Figure Shape(string name, IEnumerable<double> x, IEnumerable<double> y, Ink? ink = null, LineStyle? line = null, string? label = "") =>
        With(Figures.Series.Of(name, x, y, SeriesKind.Shape) with { Ink = ink, Line = line, Label = label });

    /// <summary>Adds a series made elsewhere.</summary>
    public Figure With(Series series) => this with { Series = Series.Add(series) };

    /// <summary>Puts a few words near a point, where there is room.</summary>
    public Figure Note(double x, double y, string text) => this with { Notes = Notes.Add(new Note(x, y, text)) };

    /// <summary>Puts a few words exactly on a point.</summary>
    public Figure Numeral(double x, double y, string text) => this with { Notes = Notes.Add(new Note(x, y, text, Centred: true)) };

    /// <summary>Draws a thin line from bottom to top.</summary>
    public Figure MarkAcross(double x, string text = "") => this with { Marks = Marks.Add(new Mark(false, x, text)) };

    /// <summary>Draws a thin line from left to right.</summary>
    public Figure MarkUp(double y, string text = "") => this with { Marks = Marks.Add(new Mark(true, y, text)) };

    /// <summary>Makes one unit as long across as it is up.</summary>
    public Figure SameScale() => this with { EqualScales = true };

    /// <summary>Leaves frame, ticks and axis titles away.</summary>
    public Figure WithoutAxes() => this with { ShowsAxes = false };

    /// <summary>Writes the short alternative text.</summary>
    public Figure Described(string description) => this with { Description = description };

    /// <summary>Writes the summary sentence; put this figure's numbers in it.</summary>
    public Figure Says(string summary) => this with { Summary = summary };

    private static Axis Checked(Axis axis)
    {
        ArgumentNullException.ThrowIfNull(axis);
        return axis.Min is { } min && axis.Max is { } max && !(min < max)
            ? throw new ArgumentException($"Axis '{axis.Label}' runs from {axis.Write(min, 2)} to {axis.Write(max, 2)}; give the smaller end first.", nameof(axis))
            : axis;
    }
}
