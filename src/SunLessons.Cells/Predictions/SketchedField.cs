using SunLessons.Cells.Checks;
using SunLessons.Cells.Live;
using SunLessons.Cells.Parts;
using SunLessons.Figures;

namespace SunLessons.Cells.Predictions;

/// <summary>Five numbers as a sketch: five fields to type in, and a small figure that follows them.</summary>
internal sealed class SketchedField : PredictionField
{
    private const int PointCount = 5;
    private const char Between = ';';
    private readonly AnswerUnit _unit;
    private readonly SketchGrid _grid;
    private readonly string[] _typed = [.. Enumerable.Repeat("", PointCount)];
    private readonly Part[] _fields;
    private readonly Part _row;
    private readonly LiveFigure _drawing;
    private IReadOnlyList<double>? _outcome;

    public SketchedField(Lesson lesson, string key, string question, SketchGrid grid)
    {
        if (grid.Points.Count != PointCount || !(grid.From < grid.To))
        {
            throw new ArgumentException($"Sketch '{key}' has {grid.Points.Count} points on a grid from {grid.From} to {grid.To}. Give 5 points, and the lower end of the grid first.", nameof(grid));
        }

        (_unit, _grid) = (AnswerUnit.Of(grid.Unit), grid);
        _fields = [.. grid.Points.Select((point, i) => Build.Text(lesson.Host, point, $"{question} {point}", "", _unit.ExampleNow, typed => Type(i, typed), submitted: Submit))];
        _row = Build.Box(lesson.Host, "sketch-fields", _fields, row: true);
        _drawing = new LiveFigure(lesson, key + "-sketch", Draw, []);
    }

    public override IReadOnlyList<Part> Parts => [_row, _drawing.Root];

    public override IReadOnlyList<Part> Inputs => _fields;

    public override string Example => string.Join(Between, Enumerable.Repeat(Say((_grid.From + _grid.To) / 2).Replace('\u2212', '-'), PointCount));

    public IReadOnlyList<string> Points => _grid.Points;

    public override Figure Grid
    {
        get
        {
            var figure = Figure.Titled(Worded($"My sketch")).AcrossNames(_grid.Across, _grid.Points);
            return _unit.Kind == AnswerKind.Clock ? figure.UpClock(_grid.Up, _grid.From, _grid.To) : figure.Up(_grid.Up, _unit.Symbol, _grid.From, _grid.To);
        }
    }

    public override PredictionAnswer Read()
    {
        var numbers = new double[PointCount];
        for (var i = 0; i < PointCount; i++)
        {
            var input = Number(i);
            if (input.Value is not { } number)
            {
                return PredictionAnswer.Not($"{_grid.Points[i]}: {input.Problem}");
            }

            numbers[i] = number;
        }

        return new PredictionAnswer(string.Join($"{Between} ", _typed.Select(t => t.Trim())), numbers);
    }

    public override bool Restore(string answer)
    {
        var parts = answer.Split(Between, StringSplitOptions.TrimEntries);
        if (parts.Length != PointCount)
        {
            return false;
        }

        for (var i = 0; i < PointCount; i++)
        {
            _typed[i] = parts[i];
            if (Number(i).Value is null)
            {
                Array.Fill(_typed, "");
                return false;
            }
        }

        for (var i = 0; i < PointCount; i++)
        {
            _fields[i].Set(("value", parts[i]));
        }

        _drawing.Touch();
        return true;
    }

    /// <summary>Draws what came out into the sketch.</summary>
    public void Show(IReadOnlyList<double> outcome)
    {
        _outcome = outcome;
        _drawing.Touch();
    }

    /// <summary>A number of this sketch as a reader says it.</summary>
    public string Say(double value) => Grid.Y.Say(value);

    public override void TellAgain() => _drawing.TellAgain();

    public override void Retire()
    {
        base.Retire();
        _drawing.Retire();
    }

    private void Type(int point, string typed)
    {
        _typed[point] = typed;
        _drawing.Touch();
    }

    private AnswerInput Number(int point)
    {
        var input = AnswerParser.Read(_typed[point], _unit.Symbol);
        return input.Value is { } value && (value < _grid.From || value > _grid.To)
            ? AnswerInput.Not(Worded($"{Say(value)} is outside {Say(_grid.From)} to {Say(_grid.To)}; write a number in that range."))
            : input;
    }


    private Figure Draw()
    {
        double[] places = [.. Enumerable.Range(0, PointCount).Select(i => (double)i)];
        double[] mine = [.. Enumerable.Range(0, PointCount).Select(i => Number(i).Value ?? double.NaN)];
        var figure = Grid.Line(Worded($"my sketch"), places, mine, Ink.Vermilion, LineStyle.Dash, MarkerShape.Square);
        var words = Worded($"My sketch: {InWords(mine)}.");
        return _outcome is { } outcome
            ? figure.Line(Worded($"what came out"), places, outcome, Ink.Blue, LineStyle.Solid, MarkerShape.Disc).Says(Worded($"{words} It came out: {InWords(outcome)}."))
            : figure.Says(words);
    }

    private string InWords(IReadOnlyList<double> values) => string.Join(", ", values.Select((value, i) => $"{_grid.Points[i]} {Say(value)}"));
}

/// <summary>The grid of a sketch.</summary>
/// <param name="Across">What runs from left to right, such as <c>Date</c>.</param>
/// <param name="Points">The five places along it.</param>
/// <param name="Up">What runs from bottom to top, such as <c>Noon by the clock</c>.</param>
/// <param name="Unit">Its unit; see <see cref="AnswerParser.Read"/>.</param>
/// <param name="From">The lower end, in the unit (hours for a clock time).</param>
/// <param name="To">The upper end.</param>
internal sealed record SketchGrid(string Across, IReadOnlyList<string> Points, string Up, string Unit, double From, double To);
