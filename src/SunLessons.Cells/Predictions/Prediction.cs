using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Text;
using SunLessons.Cells.Controls;
using SunLessons.Cells.Parts;
using SunLessons.Figures;

namespace SunLessons.Cells.Predictions;

/// <summary>
/// What the learner expects, written down before the experiment. Controls that wait for it stay locked until it is recorded; afterwards it cannot be
/// changed, and it is shown beside what came out. Nothing is revealed before.
/// </summary>
public sealed class Prediction : Shown
{
    private readonly Lock _gate = new();
    private readonly PredictionField _field;
    private readonly List<Control> _waiting = [];
    private readonly Part _words;
    private readonly Part _button;
    private readonly Part _status;
    private PredictionAnswer? _answer;
    private Instant? _at;

    internal Prediction(Lesson lesson, string key, string question, PredictionField field)
        : base(lesson, key)
    {
        (Question, _field) = (question, field);
        _words = Build.Html(Host, Html.Question(question), "question");
        _button = Build.Button(Host, Worded($"Record my prediction"), "record-prediction", OnRecord);
        _status = Build.Html(Host, Html.Status("", "summary"), "status");
        field.Submitted += OnRecord;
        Restore();
        Settle();
    }

    /// <summary>Raised once, after the prediction was recorded.</summary>
    public event Action? Recorded;

    /// <summary>Whether it is recorded.</summary>
    public bool IsRecorded => Answer is not null;

    /// <summary>The recorded answer as the learner gave it; null before.</summary>
    public string? Answer => Given?.Text;

    /// <summary>The recorded numbers, in the unit asked for (hours for a clock time): five for a sketch; none before, and for a choice.</summary>
    public IReadOnlyList<double> Numbers => Given?.Numbers ?? [];

    /// <summary>The recorded number, in the unit asked for (hours for a clock time); null before, and for a choice.</summary>
    public double? Number => Numbers is [var number] ? number : null;

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
    public override string PlainText => $"{Question} {(Answer is { } answer ? Worded($"You predicted: {answer}.") : Worded($"No prediction is recorded yet."))}";

    /// <summary>The question.</summary>
    public string Question { get; }

    /// <summary>The answers to choose from; none for a number and a sketch.</summary>
    public IReadOnlyList<string> Options => _field.Options;

    /// <summary>The grid of a sketch, empty; null for a choice and a number.</summary>
    public Figure? Grid => _field.Grid;

    private PredictionAnswer? Given
    {
        get
        {
            lock (_gate)
            {
                return _answer;
            }
        }
    }

    private string RecordKey => "prediction:" + Key;

    /// <summary>Locks controls until this prediction is recorded; a control may wait for several.</summary>
    public Prediction Unlocks(params Control[] controls)
    {
        ArgumentNullException.ThrowIfNull(controls);
        foreach (var control in controls)
        {
            _waiting.Add(control);
            control.WaitFor(this);
        }

        return this;
    }

    /// <summary>Records an example of an answer, so that somebody who rehearses a lesson can go on.</summary>
    public void RecordExample()
    {
        _field.Restore(_field.Example);
        OnRecord();
    }

    /// <summary>Shows the prediction beside the outcome; until it is recorded, the outcome is neither shown nor computed.</summary>
    /// <param name="outcome">What came out, in a few words with its numbers.</param>
    /// <param name="dependsOn">Controls on which the outcome depends; the place is always followed.</param>
    public PredictionBeside ShowBeside(Func<string> outcome, params Control[] dependsOn) =>
        Lesson.Take(new PredictionBeside(this, [Worded($"You predicted"), Worded($"It came out")], () => [[Answer!, outcome()]], dependsOn));

    /// <summary>Shows a sketch beside what came out, point by point, and draws the outcome into it.</summary>
    /// <param name="outcome">What came out at the five points, in the unit of the sketch.</param>
    /// <param name="dependsOn">Controls on which the outcome depends; the place is always followed.</param>
    /// <exception cref="InvalidOperationException">The prediction is no sketch.</exception>
    public PredictionBeside ShowBeside(Func<IReadOnlyList<double>> outcome, params Control[] dependsOn)
    {
        var sketch = _field as SketchedField
            ?? throw new InvalidOperationException($"Prediction '{Key}' is no sketch; say what came out in words: ShowBeside(() => \"...\").");
        IReadOnlyList<IReadOnlyList<string>> Rows()
        {
            var came = outcome();
            sketch.Show(came);
            return [.. sketch.Points.Select((point, i) => new[] { point, sketch.Say(Numbers[i]), sketch.Say(came[i]) })];
        }

        return Lesson.Take(new PredictionBeside(this, [Worded($"Point"), Worded($"You predicted"), Worded($"It came out")], Rows, dependsOn));
    }

    internal override Part MakeRoot() => Build.Box(Host, "prediction", [_words, .. _field.Parts, _button, _status], Key);

    internal override void TellAgain() => _field.TellAgain();

    internal override void Retire()
    {
        base.Retire();
        _field.Retire();
        foreach (var part in new[] { _words, _button, _status })
        {
            part.Retire();
        }
    }

    /// <summary>A cell was run again and made a new prediction of this name: what waited for this one waits for that one.</summary>
    internal void FollowedBy(Prediction successor)
    {
        foreach (var control in _waiting)
        {
            successor._waiting.Add(control);
            control.WaitFor(successor, insteadOf: this);
        }

        successor.Recorded += () =>
        {
            lock (_gate)
            {
                (_answer, _at) = (successor.Given, successor.RecordedAt);
            }

            Recorded?.Invoke();
        };
    }

    private static string Written(Instant at) => at.InUtc().ToString(Speech.Words["culture.moment"], Speech.Culture);

    private void Restore()
    {
        if (Lesson.Recorded(RecordKey) is JsonObject kept && Json.Text(kept["answer"]) is { } answer && Json.Text(kept["at"]) is { } at
            && InstantPattern.ExtendedIso.Parse(at).TryGetValue(default, out var instant) && _field.Restore(answer))
        {
            (_answer, _at) = (_field.Read(), instant);
        }
    }

    private void OnRecord()
    {
        if (IsRecorded)
        {
            return;
        }

        var answer = _field.Read();
        if (answer.Problem is { } problem)
        {
            _status.Set(("value", Html.Status(problem, "problem")));
            return;
        }

        var now = Lesson.Clock.GetCurrentInstant();
        lock (_gate)
        {
            (_answer, _at) = (answer, now);
        }

        Host.Record(RecordKey, new JsonObject { ["answer"] = answer.Text, ["at"] = InstantPattern.ExtendedIso.Format(now) });
        Settle();
        foreach (var control in _waiting)
        {
            control.SettleLock();
        }

        Recorded?.Invoke();
    }

    private void Settle()
    {
        if (RecordedAt is { } at)
        {
            _field.Close();
            _button.Set(("disabled", true), ("description", Worded($"Prediction recorded")));
            _status.Set(("value", Html.Status(Worded($"You predicted: {Answer}. Recorded {Written(at)}."), "summary")));
        }
    }
}
