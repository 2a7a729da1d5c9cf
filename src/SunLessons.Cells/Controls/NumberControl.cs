using System.Globalization;
using System.Text.Json.Nodes;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Controls;

/// <summary>A number between two ends. One slider widget; our pages draw it as a range with buttons and a number field.</summary>
public sealed class NumberControl : Control
{
    private readonly Lock _gate = new();
    private readonly Func<double, string>? _say;
    private readonly string _format;
    private readonly Part _slider;
    private double _value;

    internal NumberControl(Lesson lesson, string key, string label, double from, double to, double step, double start, string unit, Func<double, string>? say)
        : base(lesson, key, label)
    {
        if (!(from < to) || !(step > 0) || !(start >= from && start <= to))
        {
            throw new ArgumentException(string.Create(
                CultureInfo.InvariantCulture,
                $"Control '{key}' from {from} to {to} in steps of {step}, starting at {start}, cannot be moved. Give the smaller end first, a step above 0 and a start between the ends."));
        }

        (From, To, Step, Start, Unit, _say) = (from, to, step, start, unit, say);
        var decimals = Decimals(step).ToString(CultureInfo.InvariantCulture);
        _format = "F" + decimals;
        _value = Json.Number(lesson.Recorded(RecordKey)) is { } kept && kept >= from && kept <= to ? kept : start;
        _slider = new Part(
            Host,
            "FloatSliderModel",
            new JsonObject
            {
                ["value"] = _value,
                ["min"] = from,
                ["max"] = to,
                ["step"] = step,
                ["description"] = Description(),
                ["disabled"] = false,
                ["layout"] = Build.Wide,
                ["continuous_update"] = true,
                ["readout"] = true,
                ["readout_format"] = "." + decimals + "f",
                ["orientation"] = "horizontal",
                ["_sunlessons_role"] = "number",
                ["_sunlessons_key"] = key,
                ["_sunlessons_label"] = label,
                ["_sunlessons_unit"] = unit,
                ["_sunlessons_text"] = Text,
            },
            OnChange);
    }

    /// <summary>The lower end, in <see cref="Unit"/>.</summary>
    public double From { get; }

    /// <summary>The upper end, in <see cref="Unit"/>.</summary>
    public double To { get; }

    /// <summary>One press of a key or button, in <see cref="Unit"/>.</summary>
    public double Step { get; }

    /// <summary>The unit as written, empty for none.</summary>
    public string Unit { get; }

    /// <summary>Where it stands now, in <see cref="Unit"/>, from <see cref="From"/> to <see cref="To"/>.</summary>
    public double Value
    {
        get
        {
            if (Supposition.Of(this) is { } supposed)
            {
                return supposed;
            }

            lock (_gate)
            {
                return _value;
            }
        }
    }

    /// <summary>Where it stands, in words: <c>2.5°</c>, <c>21 Jun</c>.</summary>
    public string Text => _say is not null ? _say(Value) : Value.ToString(_format, Speech.Culture).Replace('-', '\u2212') + (Unit is "" or "°" ? Unit : " " + Unit);

    /// <inheritdoc/>
    public override string Position => Text;

    internal override double Start { get; }

    // Round numbers as far apart as a list of at most nine allows, and the start.
    internal override IReadOnlyList<double> Stations
    {
        get
        {
            IEnumerable<double> Multiples(double spacing)
            {
                for (var k = Math.Ceiling((From - 1e-9) / spacing); k * spacing <= To + 1e-9; k++)
                {
                    yield return Math.Round(From + Math.Round((k * spacing - From) / Step) * Step, 9);
                }
            }

            const int most = 9;
            var size = Math.Pow(10, Math.Floor(Math.Log10((To - From) / most)));
            var spacings = new[] { 1, 2, 2.5, 5, 10, 20 }.Select(step => Math.Max(step * size, Step));
            return spacings.Select(spacing => Multiples(spacing).Append(Start).Distinct().Order().ToArray()).First(all => all.Length <= most);
        }
    }

    internal override IEnumerable<Part> Moving => [_slider];

    /// <summary>A control stands for its number in a formula.</summary>
    public static implicit operator double(NumberControl control) => control?.Value ?? throw new ArgumentNullException(nameof(control));

    internal override Part MakeRoot() => _slider;

    private protected override void CopyFrom(Control successor)
    {
        lock (_gate)
        {
            _value = ((NumberControl)successor).Value;
        }
    }

    // Enough decimals to tell one step from the next.
    private static int Decimals(double step) => Enumerable.Range(0, 6).First(d => d == 5 || Math.Abs(Math.Round(step, d) - step) < 1e-9);

    private string Description() => _say is not null ? $"{Label}: {_say(_value)}" : Unit.Length == 0 ? Label : $"{Label} ({Unit})";

    private void OnChange(JsonObject change)
    {
        if (!change.ContainsKey("value"))
        {
            return;
        }

        if (Json.Number(change["value"]) is not { } wanted || IsLocked)
        {
            _slider.Insist("value", Value);
            return;
        }

        var taken = Math.Clamp(wanted, From, To);
        lock (_gate)
        {
            _value = taken;
        }

        if (taken != wanted)
        {
            _slider.Insist("value", taken);
        }

        _slider.Set(("_sunlessons_text", Text));
        if (_say is not null && !Host.FrontEnd.DrawsFigures)
        {
            // A front end that knows only the number shows day 172: the words have to stand in the label.
            _slider.Set(("description", Description()));
        }

        Moved(taken);
    }
}
