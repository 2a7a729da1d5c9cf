using System.Text.Json.Nodes;
using SunLessons.Cells.Controls;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Trials;

/// <summary>
/// The learner's own table of an experiment: a button keeps the present positions of the controls with what came out. It says when more than one
/// control was moved since the trial before, for then nobody can tell which one made the difference. Rows are recorded and come back.
/// </summary>
public sealed class TrialTable : Shown
{
    // More rows than this are no longer read, and a record is kept in a notebook's metadata.
    private const int MostTrials = 30;
    private readonly string _heading;
    private readonly Func<string> _outcome;
    private readonly IReadOnlyList<Control> _inputs;
    private readonly List<Trial> _trials;
    private readonly Part _keep;
    private readonly Part _drop;
    private readonly Part _note;
    private readonly Part _table;

    internal TrialTable(Lesson lesson, string key, string heading, Func<string> outcome, IReadOnlyList<Control> inputs)
        : base(lesson, key)
    {
        if (inputs.Count == 0)
        {
            throw new ArgumentException($"Trial table '{key}' follows no control; name the controls whose positions it keeps.", nameof(inputs));
        }

        (_heading, _outcome, _inputs) = (heading, outcome, inputs);
        _trials = [.. Kept(lesson.Recorded(RecordKey)).Where(t => t.Inputs.Count == inputs.Count).Take(MostTrials)];
        _keep = Build.Button(Host, "Keep this trial", "keep-trial", Keep);
        _drop = Build.Button(Host, "Take the last trial back", "drop-trial", Drop);
        _note = Build.Html(Host, Html.Status("", "summary"), "status");
        _table = Build.Html(Host, "", "trial-rows");
        Tell();
    }

    /// <summary>The trials kept, the oldest first.</summary>
    public IReadOnlyList<Trial> Trials
    {
        get
        {
            lock (_trials)
            {
                return [.. _trials];
            }
        }
    }

    /// <summary>The controls whose positions it keeps.</summary>
    public IReadOnlyList<Control> Inputs => _inputs;

    /// <summary>The note about the last trial; empty when there is nothing to say.</summary>
    public string Note { get; private set; } = "";

    /// <inheritdoc/>
    public override string PlainText => Trials is { Count: > 0 } trials
        ? string.Join('\n', trials.Select((t, i) => $"Trial {i + 1}: {string.Join(", ", _inputs.Zip(t.Inputs, (c, at) => $"{c.Label} {at}"))}: {t.Outcome}"))
        : "No trial is kept yet.";

    private string RecordKey => "trials:" + Key;

    internal override Part MakeRoot() => Build.Box(Host, "trials", [_keep, _drop, _note, _table], Key);

    internal override void Retire()
    {
        base.Retire();
        foreach (var part in new[] { _keep, _drop, _note, _table })
        {
            part.Retire();
        }
    }

    private static IEnumerable<Trial> Kept(JsonNode? record) => (record as JsonArray ?? []).OfType<JsonObject>()
        .Select(row => new Trial([.. (row["inputs"] as JsonArray ?? []).Select(Json.Text).OfType<string>()], Json.Text(row["outcome"]) ?? ""));

    private void Keep()
    {
        if (_inputs.FirstOrDefault(c => c.IsLocked) is { } locked)
        {
            Say($"Record your prediction first: {locked.Label} is still locked.");
            return;
        }

        string outcome;
        try
        {
            outcome = _outcome();
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            Say(PlainSentence.Of(error));
            return;
        }

        string note;
        lock (_trials)
        {
            var trial = new Trial([.. _inputs.Select(c => c.Position)], outcome);
            if (_trials.Count == MostTrials)
            {
                Say($"{MostTrials} trials are kept, and that is all there is room for. Take some back first.");
                return;
            }

            var changed = _trials.Count > 0 ? Changed(_trials[^1], trial) : null;
            if (changed is { Count: 0 })
            {
                Say("Nothing was moved since the last trial, so there is nothing new to keep. Move one control first.");
                return;
            }

            _trials.Add(trial);
            note = changed is { Count: > 1 }
                ? $"One thing at a time: since the last trial these were moved together: {string.Join(", ", changed)}. Nobody can tell which one made the difference. Move one back and keep that trial too."
                : "";
        }

        Record();
        Say(note);
    }

    private void Drop()
    {
        lock (_trials)
        {
            if (_trials.Count > 0)
            {
                _trials.RemoveAt(_trials.Count - 1);
            }
        }

        Record();
        Say("");
    }

    private IReadOnlyList<string> Changed(Trial before, Trial after) =>
        [.. _inputs.Where((_, i) => before.Inputs[i] != after.Inputs[i]).Select(c => c.Label)];

    private void Say(string note)
    {
        Note = note;
        Tell();
    }

    private void Tell()
    {
        var trials = Trials;
        _drop.Set(("disabled", trials.Count == 0));
        _note.Set(("value", Html.Status(Note, "summary")));
        var rows = trials.Select((t, i) => (IReadOnlyList<string>)[$"{i + 1}", .. t.Inputs, t.Outcome, i == 0 ? "" : Moved(Changed(trials[i - 1], t))]);
        _table.Set(("value", trials.Count == 0
            ? "<p>No trial is kept yet.</p>"
            : Html.Table("My trials", ["Trial", .. _inputs.Select(c => c.Label), _heading, "Moved since the trial before"], rows, headedRows: true)));
    }

    private static string Moved(IReadOnlyList<string> changed) => string.Join(" and ", changed) + (changed.Count > 1 ? ": two things at once" : "");

    private void Record() => Host.Record(RecordKey, new JsonArray([.. Trials.Select(t => (JsonNode)new JsonObject
    {
        ["inputs"] = new JsonArray([.. t.Inputs.Select(i => (JsonNode)i)]),
        ["outcome"] = t.Outcome,
    })]));
}
