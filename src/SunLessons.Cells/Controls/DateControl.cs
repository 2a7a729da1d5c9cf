using System.Text.Json.Nodes;
using NodaTime;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Controls;

/// <summary>A date to pick, from 1900 to 2100: the years for which the library's Sun is proved.</summary>
public sealed class DateControl : Control
{
    private static readonly LocalDate First = new(1900, 1, 1);
    private static readonly LocalDate Last = new(2100, 12, 31);
    private static readonly AnnualDate[] Turns = [new(3, 20), new(6, 21), new(9, 23), new(12, 21)];
    private readonly Lock _gate = new();
    private readonly Part _picker;
    private LocalDate _date;

    internal DateControl(Lesson lesson, string key, string label, LocalDate start)
        : base(lesson, key, label)
    {
        if (start < First || start > Last)
        {
            throw new ArgumentException($"Control '{key}' starts at {start:uuuu-MM-dd}, outside 1900-01-01 to 2100-12-31. Give a date between them.", nameof(start));
        }

        Start = Number(start);
        _date = Read(lesson.Recorded(RecordKey)) ?? start;
        _picker = new Part(
            Host,
            "DatePickerModel",
            new JsonObject
            {
                ["value"] = Written(_date),
                ["min"] = Written(First),
                ["max"] = Written(Last),
                ["description"] = label,
                ["disabled"] = false,
                ["_sunlessons_role"] = "date",
                ["_sunlessons_key"] = key,
                ["_sunlessons_label"] = label,
                ["_sunlessons_text"] = InWords(_date),
            },
            OnChange);
    }

    /// <summary>The picked date, Gregorian.</summary>
    public LocalDate Date
    {
        get
        {
            if (Supposition.Of(this) is { } supposed)
            {
                return First.PlusDays((int)supposed);
            }

            lock (_gate)
            {
                return _date;
            }
        }
    }

    /// <inheritdoc/>
    public override string Position => $"{Date:uuuu-MM-dd}";

    internal override double Start { get; }

    // Equinoxes and solstices of the year: where the seasons turn.
    internal override IReadOnlyList<double> Stations => [.. Turns.Select(turn => Number(turn.InYear(Date.Year)))];

    internal override IEnumerable<Part> Moving => [_picker];

    /// <summary>A date control stands for its date.</summary>
    public static implicit operator LocalDate(DateControl control) => control?.Date ?? throw new ArgumentNullException(nameof(control));

    internal override Part MakeRoot() => _picker;

    private protected override void CopyFrom(Control successor)
    {
        lock (_gate)
        {
            _date = ((DateControl)successor).Date;
        }
    }

    private static double Number(LocalDate date) => Period.DaysBetween(First, date);

    // The standard's own form of a date: its months begin at 0.
    private static JsonObject Written(LocalDate date) => new() { ["year"] = date.Year, ["month"] = date.Month - 1, ["date"] = date.Day };

    // Such as 3 de noviembre de 2026: a front end writes dates in the language of its own settings.
    private static string InWords(LocalDate date) => date.ToString(Speech.Words["culture.date"], Speech.Culture);

    private static LocalDate? Read(JsonNode? node)
    {
        if (Json.Number(node?["year"]) is not { } year || Json.Number(node?["month"]) is not { } month || Json.Number(node?["date"]) is not { } day
            || year is < 1900 or > 2100 || month is < 0 or > 11 || day < 1 || day > CalendarSystem.Iso.GetDaysInMonth((int)year, (int)month + 1))
        {
            return null;
        }

        return new LocalDate((int)year, (int)month + 1, (int)day);
    }

    private void OnChange(JsonObject change)
    {
        if (!change.ContainsKey("value"))
        {
            return;
        }

        if (IsLocked || Read(change["value"]) is not { } wanted)
        {
            _picker.Insist("value", Written(Date));
            return;
        }

        lock (_gate)
        {
            _date = wanted;
        }

        _picker.Set(("_sunlessons_text", InWords(wanted)));
        Moved(Written(wanted));
    }
}
