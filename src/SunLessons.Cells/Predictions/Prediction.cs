using System.Globalization;
using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Text;
using SunLessons.Cells.Checks;
using SunLessons.Cells.Controls;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Predictions;

/// <summary>
/// What the learner expects, written down before the experiment. Controls that wait for it stay locked until it is recorded; afterwards it cannot be
/// changed, and it is shown beside what came out. Nothing is revealed before.
/// </summary>
public sealed class Prediction : Shown
{
    private readonly Lock _gate = new();
    private readonly string _question;
    private readonly string? _unit;
    private readonly IReadOnlyList<string> _options;
    private readonly List<Control> _waiting = [];
    private readonly Part _words;
    private readonly Part _field;
    private readonly Part _button;
    private readonly Part _status;
    private int? _chosen;
    private string _typed = "";
    private string? _answer;
    private double? _number;
    private Instant? _at;

    internal Prediction(Lesson lesson, string key, string question, IReadOnlyList<string> options, string? unit)
        : base(lesson, key)
    {
        (_question, _options, _unit) = (question, options, unit);
        if (unit is null && (options.Count < 2 || options.Distinct().Count() != options.Count))
        {
            throw new ArgumentException($"Prediction '{key}' offers {options.Count} answers, or one of them twice. Give at least 2 different answers.", nameof(options));
        }

        if (unit is not null)
        {
            AnswerUnit.Check(unit);
        }

        Restore();
        _words = Build.Html(Host, Html.Question(question), "question");
        _field = unit is null
            ? Build.Options(Host, "RadioButtonsModel", "My prediction", question, options, _chosen, chosen => _chosen = chosen >= 0 && chosen < options.Count ? chosen : _chosen)
            : Build.Text(Host, "My prediction", question, _typed, AnswerUnit.Of(unit).Example, typed => _typed = typed, submitted: OnRecord);
        _button = Build.Button(Host, "Record my prediction", "record-prediction", OnRecord);
        _status = Build.Html(Host, Html.Status("", "summary"), "status");
        Settle();
    }

    /// <summary>Raised once, after the prediction was recorded.</summary>
    public event Action? Recorded;

    /// <summary>Whether it is recorded.</summary>
    public bool IsRecorded => Answer is not null;

    /// <summary>The recorded answer as the learner gave it; null before.</summary>
    public string? Answer
    {
        get
        {
            lock (_gate)
            {
                return _answer;
            }
        }
    }

    /// <summary>The recorded number, in the unit asked for (hours for a clock time); null before, and for a choice.</summary>
    public double? Number
    {
        get
        {
            lock (_gate)
            {
                return _number;
            }
        }
    }

    /// <summary>When it was recorded; null before.</summary>
    public Instant? RecordedAt
    {
        get
        {
            lock (_gate)
            {
                return _at;
            }
        }
    }

    /// <inheritdoc/>
    public override string PlainText => $"{_question} {(Answer is { } answer ? $"You predicted: {answer}." : "No prediction is recorded yet.")}";

    private string RecordKey => "prediction:" + Key;

    /// <summary>Locks controls until this prediction is recorded.</summary>
    public Prediction Unlocks(params Control[] controls)
    {
        ArgumentNullException.ThrowIfNull(controls);
        foreach (var control in controls)
        {
            _waiting.Add(control);
            control.Lock(!IsRecorded);
        }

        return this;
    }

    /// <summary>Shows the prediction beside the outcome; until it is recorded, the outcome is neither shown nor computed.</summary>
    /// <param name="outcome">What came out, in a few words with its numbers.</param>
    /// <param name="dependsOn">Controls on which the outcome depends; the place is always followed.</param>
    public PredictionBeside ShowBeside(Func<string> outcome, params Control[] dependsOn) => Lesson.Take(new PredictionBeside(this, outcome, dependsOn));

    internal override Part MakeRoot() => Build.Box(Host, "prediction", [_words, _field, _button, _status], Key);

    internal override void Retire()
    {
        base.Retire();
        foreach (var part in new[] { _words, _field, _button, _status })
        {
            part.Retire();
        }
    }

    /// <summary>A cell was run again and made a new prediction of this name: what waited for this one waits for that one.</summary>
    internal void FollowedBy(Prediction successor)
    {
        successor.Unlocks([.. _waiting]);
        successor.Recorded += () =>
        {
            lock (_gate)
            {
                (_answer, _number, _at) = (successor.Answer, successor.Number, successor.RecordedAt);
            }

            Recorded?.Invoke();
        };
    }

    private static string Written(Instant at) => at.InUtc().ToString("d MMMM uuuu, HH:mm 'UT'", CultureInfo.InvariantCulture);

    private void Restore()
    {
        if (Lesson.Recorded(RecordKey) is not JsonObject kept || Json.Text(kept["answer"]) is not { } answer
            || Json.Text(kept["at"]) is not { } at || !InstantPattern.ExtendedIso.Parse(at).TryGetValue(default, out var instant))
        {
            return;
        }

        if (_unit is null)
        {
            var index = _options.ToList().IndexOf(answer);
            if (index < 0)
            {
                return;
            }

            _chosen = index;
        }
        else
        {
            if (AnswerParser.Read(answer, _unit).Value is not { } number)
            {
                return;
            }

            (_typed, _number) = (answer, number);
        }

        (_answer, _at) = (answer, instant);
    }

    private void OnRecord()
    {
        if (IsRecorded)
        {
            return;
        }

        string answer;
        double? number = null;
        if (_unit is null)
        {
            if (_chosen is not { } index)
            {
                _status.Set(("value", Html.Status("Choose one of the answers first; a guess is welcome.", "problem")));
                return;
            }

            answer = _options[index];
        }
        else
        {
            var input = AnswerParser.Read(_typed, _unit);
            if (input.Value is null)
            {
                _status.Set(("value", Html.Status(input.Problem!, "problem")));
                return;
            }

            (answer, number) = (_typed.Trim(), input.Value);
        }

        var now = Lesson.Clock.GetCurrentInstant();
        lock (_gate)
        {
            (_answer, _number, _at) = (answer, number, now);
        }

        Host.Record(RecordKey, new JsonObject { ["answer"] = answer, ["at"] = InstantPattern.ExtendedIso.Format(now) });
        Settle();
        foreach (var control in _waiting)
        {
            control.Lock(false);
        }

        Recorded?.Invoke();
    }

    private void Settle()
    {
        if (RecordedAt is { } at)
        {
            _field.Set(("disabled", true));
            _button.Set(("disabled", true), ("description", "Prediction recorded"));
            _status.Set(("value", Html.Status($"You predicted: {Answer}. Recorded {Written(at)}.", "summary")));
        }
    }
}
