using System.Text.Json.Nodes;
using NodaTime.Text;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Checks;

/// <summary>
/// A question that answers back: four states, wrong paths by name, three hints one after another and then the worked solution. No marks are given.
/// What the learner answered, the wrong paths and hints taken, the number of tries and the times of the first and of the right one are recorded and come back.
/// </summary>
public abstract class Check : Shown
{
    private const int HintCount = 3;
    private readonly IReadOnlyList<string> _hints;
    private readonly Part _words;
    private readonly Part _hintButton;
    private readonly Part _button;
    private readonly Part _status;
    private readonly Part _help;
    private readonly Func<string> _question;
    private readonly Func<string> _solution;
    private readonly List<string> _wrong;
    private int _hintsTaken;
    private int _tries;
    private string? _firstAt;
    private string? _rightAt;

    private protected Check(Lesson lesson, string key, Func<string> question, IReadOnlyList<string> hints, Func<string> solution)
        : base(lesson, key)
    {
        if (hints.Count != HintCount || hints.Any(string.IsNullOrWhiteSpace))
        {
            throw new ArgumentException($"Check '{key}' has {hints.Count} hints; give {HintCount} hints, each one going further, and the worked solution.", nameof(hints));
        }

        (_question, _hints, _solution) = (question, hints, solution);
        var kept = lesson.Recorded(RecordKey) as JsonObject;
        _hintsTaken = (int)Math.Clamp(Json.Number(kept?["hints"]) ?? 0, 0, HintCount + 1);
        _tries = (int)Math.Max(0, Json.Number(kept?["tries"]) ?? 0);
        _wrong = [.. (kept?["wrong"] as JsonArray ?? []).Select(Json.Text).OfType<string>()];
        (_firstAt, _rightAt) = (Json.Text(kept?["first_at"]), Json.Text(kept?["right_at"]));
        KeptAnswer = Json.Text(kept?["answer"]) ?? "";
        WasJudged = Json.Text(kept?["state"]) is { } state && state != Name(CheckState.NotStarted);
        _words = Build.Html(Host, Html.Question(Question), "question");
        _button = Build.Button(Host, Worded($"Check my answer"), "check-answer", () => Answered(counts: true));
        _hintButton = Build.Button(Host, "", "hint", TakeHint);
        _status = Build.Html(Host, "", "status");
        _help = Build.Html(Host, "", "help");
        TellHints();
    }

    /// <summary>The question.</summary>
    public string Question => _question();

    /// <summary>The worked solution, shown after the third hint and after the right answer.</summary>
    public string Solution => _solution();

    /// <summary>How far the learner got.</summary>
    public CheckState State { get; private set; }

    /// <summary>The name of the wrong path that the last answer followed; null when it followed none that is known.</summary>
    public string? WrongPathName { get; private set; }

    /// <summary>What was last replied, in words.</summary>
    public string Reply { get; private set; } = "";

    /// <summary>How many hints were taken, 0 to 3; 4 after the worked solution was opened.</summary>
    public int HintsTaken => _hintsTaken;

    /// <summary>The three hints, each going further.</summary>
    public IReadOnlyList<string> Hints => _hints;

    /// <inheritdoc/>
    public override string PlainText => $"{Question} {Reply}".TrimEnd();

    private protected string KeptAnswer { get; }

    /// <summary>Whether the kept answer had been judged; one that was only typed stays unjudged.</summary>
    private protected bool WasJudged { get; }

    private string RecordKey => "check:" + Key;

    private protected abstract Part Field { get; }

    private protected abstract string AnswerText { get; }

    internal override Part MakeRoot() => Build.Box(Host, "check", [_words, Field, _button, _hintButton, _status, _help], Key);

    internal override void Retire()
    {
        base.Retire();
        foreach (var part in new[] { _words, Field, _button, _hintButton, _status, _help })
        {
            part.Retire();
        }
    }

    /// <summary>Judges the present answer.</summary>
    private protected abstract Judgement Judge();

    /// <summary>Takes an answer that was typed or chosen, for the record; it is judged when the button is pressed.</summary>
    private protected void Typed() => Record();

    private protected void Answered(bool counts)
    {
        var judgement = Judge();
        WrongPathName = judgement.Wrong;
        Reply = judgement.Reply;
        if (judgement.State is not { } judged)
        {
            _status.Set(("value", Html.Status(Reply, "problem")), ("_sunlessons_state", Name(State)));
            return;
        }

        State = judged;
        if (counts)
        {
            Count(judged, judgement.WrongId);
        }

        TellHints();
        _status.Set(("value", Html.Status(Reply, judged == CheckState.Right ? "right" : judged == CheckState.Nearly ? "nearly" : "notyet")), ("_sunlessons_state", Name(judged)));
        if (counts)
        {
            Record();
        }
    }

    /// <summary>The place changed: question and solution are told for the new one, and a judged answer is judged again.</summary>
    private protected void AskAgain()
    {
        _words.Set(("value", Html.Question(Question)));
        TellHints();
        if (State != CheckState.NotStarted)
        {
            Answered(counts: false);
        }
    }

    private static string Name(CheckState state) => state switch
    {
        CheckState.Right => "right",
        CheckState.Nearly => "nearly",
        CheckState.NotYet => "not-yet",
        _ => "not-started",
    };

    private void Count(CheckState state, string? wrong)
    {
        var now = InstantPattern.ExtendedIso.Format(Lesson.Clock.GetCurrentInstant());
        _tries++;
        _firstAt ??= now;
        if (state == CheckState.Right)
        {
            _rightAt ??= now;
        }

        if (wrong is not null && !_wrong.Contains(wrong))
        {
            _wrong.Add(wrong);
        }

        if (state == CheckState.NotYet && wrong is null && _hintsTaken < HintCount)
        {
            // Never a bare "wrong": an answer that no known slip explains brings the next hint.
            _hintsTaken++;
        }
    }

    private void TakeHint()
    {
        if (_hintsTaken <= HintCount)
        {
            _hintsTaken++;
            TellHints();
            Record();
        }
    }

    private void TellHints()
    {
        var shown = _hints.Take(_hintsTaken).Select((hint, i) => $"<p class=\"sunlessons-hint\"><strong>{Html.E(Worded($"Hint {i + 1} of {HintCount}:"))}</strong> {Html.E(hint)}</p>");
        var solved = _hintsTaken > HintCount || State == CheckState.Right;
        var solution = solved ? $"<p class=\"sunlessons-solution\"><strong>{Html.E(Worded($"Worked solution:"))}</strong> {Html.E(Solution)}</p>" : "";
        _help.Set(("value", $"<div role=\"status\">{string.Concat(shown)}{solution}</div>"));
        _hintButton.Set(
            ("description", _hintsTaken < HintCount ? Worded($"Hint {_hintsTaken + 1} of {HintCount}") : Worded($"Show the worked solution")),
            ("disabled", solved));
    }

    private void Record() => Host.Record(RecordKey, new JsonObject
    {
        ["answer"] = AnswerText,
        ["state"] = Name(State),
        ["hints"] = _hintsTaken,
        ["tries"] = _tries,
        ["wrong"] = new JsonArray([.. _wrong.Select(w => (JsonNode)w)]),
        ["first_at"] = _firstAt,
        ["right_at"] = _rightAt,
    });
}
