using System.Text.Json.Nodes;
using SunLessons.Cells.Checks;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Worked;

/// <summary>
/// A calculation in steps, of which some or all are blank for the learner to fill in. What was typed and how many steps were shown is recorded
/// and comes back.
/// </summary>
public sealed class WorkedExample : Shown
{
    private readonly Func<string> _title;
    private readonly Func<IReadOnlyList<WorkedLine>> _make;
    private readonly bool _follows;
    private readonly Part _heading;
    private readonly IReadOnlyList<StepParts> _steps;
    private readonly Part? _checkButton;
    private readonly Part? _showButton;

    internal WorkedExample(Lesson lesson, string key, Func<string> title, Fade fade, Func<IReadOnlyList<WorkedLine>> lines, bool follows)
        : base(lesson, key)
    {
        (_title, _make, _follows, Fade) = (title, lines, follows, fade);
        Lines = lines();
        if (Lines.Count < 2 || Lines.Count(l => l.IsIdea) != 1)
        {
            throw new ArgumentException($"Worked example '{key}' has {Lines.Count} steps and {Lines.Count(l => l.IsIdea)} of them that carry the idea. Give at least 2 steps and say idea: true at one.", nameof(lines));
        }

        FirstBlank = fade switch { Fade.NoStep => Lines.Count, Fade.LastSteps => Lines.ToList().FindIndex(l => l.IsIdea), _ => 0 };
        var kept = lesson.Recorded(RecordKey) as JsonObject;
        _heading = Build.Html(Host, Html.Question(title()), "question");
        _steps = [.. Lines.Select((line, i) => new StepParts(this, i, i >= FirstBlank, Json.Text((kept?["answers"] as JsonArray)?.ElementAtOrDefault(i)) ?? "", Json.Truth((kept?["shown"] as JsonArray)?.ElementAtOrDefault(i)) ?? false))];
        if (FirstBlank < Lines.Count)
        {
            _checkButton = Build.Button(Host, Worded($"Check my steps"), "check-steps", CheckAll);
            _showButton = Build.Button(Host, Worded($"Show the next step"), "show-step", ShowNext);
        }

        if (follows)
        {
            lesson.PlaceMoved += Follow;
        }

        if (kept is not null)
        {
            CheckTyped();
        }
    }

    /// <summary>How much is left to the learner.</summary>
    public Fade Fade { get; }

    /// <summary>What is worked out.</summary>
    public string Title => _title();

    /// <summary>The steps, for the present place.</summary>
    public IReadOnlyList<WorkedLine> Lines { get; private set; }

    /// <summary>The first step that is blank, 0 for the first of all; the number of steps when none is.</summary>
    public int FirstBlank { get; }

    /// <summary>Whether each step is filled in rightly or shown.</summary>
    public bool IsDone => _steps.All(s => s.IsDone);

    /// <inheritdoc/>
    public override string PlainText => _title() + "\n" + string.Join('\n', Lines.Select((line, i) => i < FirstBlank ? $"{i + 1}. {line.Words}: {line.Text}. {line.Why}" : $"{i + 1}. {line.Words}: ..."));

    private string RecordKey => "worked:" + Key;

    /// <summary>What was last replied at a step, in words; empty before.</summary>
    public string ReplyAt(int step) => _steps[step].Reply;

    internal override Part MakeRoot() => Build.Box(Host, "worked", Parts(), Key);

    internal override void Retire()
    {
        Lesson.PlaceMoved -= Follow;
        base.Retire();
        foreach (var part in Parts())
        {
            part.Retire();
        }
    }

    private IEnumerable<Part> Parts() => [_heading, .. _steps.SelectMany(s => s.All), .. new[] { _checkButton, _showButton }.OfType<Part>()];

    private void Follow()
    {
        Lines = _make();
        _heading.Set(("value", Html.Question(_title())));
        foreach (var step in _steps)
        {
            step.Tell();
        }
    }

    private void CheckAll()
    {
        // A step that nobody has tried yet is left in peace, unless none was tried.
        var tried = _steps.Where(s => s.Typed.Length > 0).ToArray();
        foreach (var step in tried.Length > 0 ? tried : _steps.Where(s => !s.IsDone).Take(1))
        {
            step.Check();
        }

        Record();
    }

    private void CheckTyped()
    {
        foreach (var step in _steps.Where(s => s.Typed.Length > 0))
        {
            step.Check();
        }
    }

    private void ShowNext()
    {
        _steps.FirstOrDefault(s => !s.IsDone)?.Show();
        Record();
    }

    private void Record() => Host.Record(RecordKey, new JsonObject
    {
        ["answers"] = new JsonArray([.. _steps.Select(s => (JsonNode)s.Typed)]),
        ["shown"] = new JsonArray([.. _steps.Select(s => (JsonNode)s.WasShown)]),
    });

    /// <summary>One step in the page: written out, or a field with its reply.</summary>
    private sealed class StepParts
    {
        private readonly WorkedExample _example;
        private readonly int _index;
        private readonly Part? _asks;
        private readonly Part? _field;
        private readonly Part _words;
        private CheckState _state;

        public StepParts(WorkedExample example, int index, bool blank, string typed, bool shown)
        {
            (_example, _index, Typed, WasShown) = (example, index, typed, shown);
            if (blank)
            {
                _asks = Build.Html(example.Host, "", "step-asks");
                _field = Build.Text(
                    example.Host,
                    Worded($"Step {index + 1}"),
                    Worded($"Step {index + 1}: {Line.Words}"),
                    typed,
                    Line.Example,
                    text =>
                    {
                        Typed = text;
                        example.Record();
                    },
                    submitted: () =>
                    {
                        Check();
                        example.Record();
                    });
            }

            _words = Build.Html(example.Host, "", blank ? "step-reply" : "step");
            Tell();
        }

        public string Typed { get; private set; }

        public bool WasShown { get; private set; }

        public string Reply { get; private set; } = "";

        public bool IsDone => _field is null || WasShown || _state == CheckState.Right;

        public IEnumerable<Part> All => new[] { _asks, _field, _words }.OfType<Part>();

        private WorkedLine Line => _example.Lines[_index];

        public void Check()
        {
            if (_field is null || WasShown)
            {
                return;
            }

            var judgement = Line.Judge(Typed);
            _state = judgement.State ?? CheckState.NotStarted;
            Reply = _state == CheckState.Right ? $"{judgement.Reply} {Line.Why}" : judgement.Reply;
            _words.Set(("value", Html.Status(Reply, judgement.State switch { null => "problem", CheckState.Right => "right", CheckState.Nearly => "nearly", _ => "notyet" })));
        }

        public void Show()
        {
            WasShown = true;
            Tell();
        }

        /// <summary>Writes the step for the present place.</summary>
        public void Tell()
        {
            string Step(string rest) => $"<p class=\"sunlessons-step\"><strong>{_index + 1}. {Html.E(Line.Words)}:</strong>{rest}</p>";
            _asks?.Set(("value", Step("")));
            if (_field is null)
            {
                _words.Set(("value", Step($" {Html.E(Line.Text)}. {Html.E(Line.Why)}")));
            }
            else if (WasShown)
            {
                Reply = $"{Line.Text}. {Line.Why}";
                _words.Set(("value", Html.Status(Reply, "shown")));
            }
            else if (_state != CheckState.NotStarted)
            {
                Check();
            }
            else
            {
                _words.Set(("value", Html.Status("", "shown")));
            }
        }
    }
}
