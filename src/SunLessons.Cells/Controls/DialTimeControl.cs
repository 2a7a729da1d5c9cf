using SunLessons.Cells.Checks;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Controls;

/// <summary>What a dial shows, typed as hours and minutes: <c>10:30</c>, <c>10.5</c> is refused as no clock time.</summary>
public sealed class DialTimeControl : Control
{
    private readonly Lock _gate = new();
    private readonly Part _field;
    private readonly Part _problem;
    private DialTime _time;

    internal DialTimeControl(Lesson lesson, string key, string label, DialTime start)
        : base(lesson, key, label)
    {
        Start = start.Hours;
        var kept = Json.Text(lesson.Recorded(RecordKey)) ?? "";
        _time = AnswerParser.Read(kept, "clock").Value is { } hours ? DialTime.FromHours(hours) : start;
        _field = Build.Text(Host, label, label, Written(_time), AnswerUnit.Of("clock").ExampleNow, OnTyped);
        _problem = Build.Html(Host, "", "status");
    }

    /// <summary>What the dial shows, local apparent time by its own numbers.</summary>
    public DialTime Time
    {
        get
        {
            if (Supposition.Of(this) is { } supposed)
            {
                return DialTime.FromHours(supposed);
            }

            lock (_gate)
            {
                return _time;
            }
        }
    }

    /// <inheritdoc/>
    public override string Position => Written(Time);

    internal override double Start { get; }

    internal override IReadOnlyList<double> Stations => [9, 10.5, 12, 13.5, 15];

    internal override IEnumerable<Part> Moving => [_field];

    /// <summary>The control stands for the time that was typed.</summary>
    public static implicit operator DialTime(DialTimeControl control) => control?.Time ?? throw new ArgumentNullException(nameof(control));

    internal override Part MakeRoot() => Build.Box(Host, "dial-time", [_field, _problem], Key);

    private protected override void CopyFrom(Control successor)
    {
        lock (_gate)
        {
            _time = ((DialTimeControl)successor).Time;
        }
    }

    private static string Written(DialTime time)
    {
        var minutes = (int)Math.Round(time.MinutesOfDay);
        return $"{minutes / 60}:{minutes % 60:00}";
    }

    private void OnTyped(string typed)
    {
        var read = AnswerParser.Read(typed, "clock");
        if (read.Value is not { } hours)
        {
            // The last time that could be read still holds; what was typed stays in the field.
            _problem.Set(("value", Html.Status(read.Problem!, "problem")));
            return;
        }

        _problem.Set(("value", ""));
        lock (_gate)
        {
            _time = DialTime.FromHours(hours);
        }

        Moved(Written(_time));
    }
}
