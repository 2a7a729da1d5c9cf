using System.Text.Json.Nodes;
using SunLessons.Cells.Controls;
using SunLessons.Cells.Live;
using SunLessons.Cells.Parts;
using SunLessons.Figures;

namespace SunLessons.Cells.Trials;

/// <summary>
/// The learner's own table of an experiment: a button keeps the present positions of the controls with what came out. It says when more than one
/// control was moved since the trial before, for then nobody can tell which one made the difference. Rows are recorded and come back.
/// Below stands the same experiment as stored trials, one control after another moved alone.
/// </summary>
public sealed class TrialTable : Shown
{
    // More rows than this are no longer read, and a record is kept in a notebook's metadata.
    private const int MostTrials = 30;
    private readonly List<(string Heading, Func<string> Outcome)> _outcomes;
    private readonly Dictionary<Control, double> _held = [];
    private readonly Dictionary<Control, IReadOnlyList<double>> _stations = [];
    private readonly IReadOnlyList<Control> _inputs;
    private readonly List<Trial> _trials;
    private readonly Part _keep;
    private readonly Part _drop;
    private readonly Part _note;
    private readonly Part _table;
    private readonly StoredTrials _stored;

    internal TrialTable(Lesson lesson, string key, string heading, Func<string> outcome, IReadOnlyList<Control> inputs)
        : base(lesson, key)
    {
        if (inputs.Count == 0)
        {
            throw new ArgumentException($"Trial table '{key}' follows no control; name the controls whose positions it keeps.", nameof(inputs));
        }

        (_outcomes, _inputs) = ([(heading, outcome)], inputs);
        _trials = [.. Kept(lesson.Recorded(RecordKey)).Where(t => t.Inputs.Count == inputs.Count).Take(MostTrials)];
        _keep = Build.Button(Host, Worded($"Keep this trial"), "keep-trial", Keep);
        _drop = Build.Button(Host, Worded($"Take the last trial back"), "drop-trial", Drop);
        _note = Build.Html(Host, Html.Status("", "summary"), "status");
        _table = Build.Html(Host, "", "trial-rows");
        _stored = new StoredTrials(lesson, this);
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
        ? string.Join('\n', trials.Select((t, i) => Worded($"Trial {i + 1}: {string.Join(", ", _inputs.Zip(t.Inputs, (c, at) => $"{c.Label} {at}"))}: {Said(t)}")))
        : Worded($"No trial is kept yet.");

    /// <summary>Adds another column for what comes out.</summary>
    /// <param name="heading">The head of the column, such as <c>22 December (min)</c>.</param>
    /// <param name="outcome">What came out at the present positions, in a few words.</param>
    public TrialTable And(string heading, Func<string> outcome)
    {
        _outcomes.Add((heading, outcome));
        Tell();
        return this;
    }

    /// <summary>Says where stored trials hold a control while another is moved; the start unless said.</summary>
    public TrialTable Held(NumberControl control, double position) => Hold(control, position);

    /// <inheritdoc cref="Held(NumberControl, double)"/>
    public TrialTable Held(ChoiceControl control, string position) => Hold(control, Index(control, position));

    /// <inheritdoc cref="Held(NumberControl, double)"/>
    public TrialTable Held(SwitchControl control, bool position) => Hold(control, position ? 1 : 0);

    /// <summary>Says at which positions a control makes stored trials, from low to high; round numbers through its range unless said.</summary>
    public TrialTable Swept(NumberControl control, params IReadOnlyList<double> positions) => Station(control, positions);

    /// <inheritdoc cref="Swept(NumberControl, IReadOnlyList{double})"/>
    public TrialTable Swept(ChoiceControl control, params IReadOnlyList<string> positions) => Station(control, [.. positions.Select(name => Index(control, name))]);

    /// <summary>The stored trials: each control in turn moved alone, the others held. Computed anew at each call, for the present place.</summary>
    public IReadOnlyList<Sweep> Sweeps() => [.. _inputs.Select(SweepOf)];

    /// <summary>A figure as it stands when every control of this experiment has its held position; null when it follows none of them, or there is none then.</summary>
    public Figure? Drawn(LiveFigure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return figure.DependsOn.Intersect(_inputs).Any() ? Supposition.Ask(HeldPositions(), figure.Afresh) : null;
    }

    private string RecordKey => "trials:" + Key;

    internal override Part MakeRoot() => Build.Box(Host, "trials", [_keep, _drop, _note, _table, _stored.Root], Key);

    internal override void Retire()
    {
        base.Retire();
        _stored.Retire();
        foreach (var part in new[] { _keep, _drop, _note, _table })
        {
            part.Retire();
        }
    }

    private static IEnumerable<Trial> Kept(JsonNode? record) => (record as JsonArray ?? []).OfType<JsonObject>()
        .Select(row => new Trial(Texts(row["inputs"]), Texts(row["outcomes"])));

    private static IReadOnlyList<string> Texts(JsonNode? list) => [.. (list as JsonArray ?? []).Select(Json.Text).OfType<string>()];

    private static string Said(Trial trial) => string.Join(", ", trial.Outcomes);

    private static double Index(ChoiceControl control, string name)
    {
        ArgumentNullException.ThrowIfNull(control);
        return control.PositionOf(name) ?? throw new ArgumentException($"'{name}' is none of the names of '{control.Key}'. Write one of {string.Join(", ", control.Options)}.", nameof(name));
    }

    private TrialTable Hold(Control control, double position)
    {
        _held[Mine(control)] = position;
        return this;
    }

    private TrialTable Station(Control control, IReadOnlyList<double> positions)
    {
        _stations[Mine(control)] = positions;
        return this;
    }

    private Control Mine(Control control) => _inputs.Contains(control)
        ? control
        : throw new ArgumentException($"Trial table '{Key}' does not follow the control '{control?.Key}'. Name it among its controls.", nameof(control));

    private Dictionary<Control, double> HeldPositions() => _inputs.ToDictionary(input => input, input => _held.TryGetValue(input, out var held) ? held : input.Start);

    private Sweep SweepOf(Control moved)
    {
        var held = HeldPositions();
        Trial At(double position) => Supposition.Ask(new Dictionary<Control, double>(held) { [moved] = position }, () => new Trial([moved.Position], [.. _outcomes.Select(o => Told(o.Outcome))]));
        var rows = (_stations.TryGetValue(moved, out var said) ? said : moved.Stations).Select(At).ToArray();
        return new Sweep(moved, Supposition.Ask(held, () => string.Join(", ", _inputs.Where(input => input != moved).Select(input => $"{input.Label} {input.Position}"))), [.. _outcomes.Select(o => o.Heading)], rows);
    }

    // A position at which nothing comes out is a row like the others, with the reason.
    private static string Told(Func<string> outcome)
    {
        try
        {
            return outcome();
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            return PlainSentence.Of(error);
        }
    }

    private IReadOnlyList<string> Outcome() => [.. _outcomes.Select(o => o.Outcome())];

    private void Keep()
    {
        if (_inputs.FirstOrDefault(c => c.IsLocked) is { } locked)
        {
            Say(Worded($"Record your prediction first: {locked.Label} is still locked."));
            return;
        }

        IReadOnlyList<string> outcome;
        try
        {
            outcome = Outcome();
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
                Say(Worded($"{MostTrials} trials are kept, and that is all there is room for. Take some back first."));
                return;
            }

            var changed = _trials.Count > 0 ? Changed(_trials[^1], trial) : null;
            if (changed is { Count: 0 })
            {
                Say(Worded($"Nothing was moved since the last trial, so there is nothing new to keep. Move one control first."));
                return;
            }

            _trials.Add(trial);
            note = changed is { Count: > 1 }
                ? Worded($"One thing at a time: since the last trial these were moved together: {string.Join(", ", changed)}. Nobody can tell which one made the difference. Move one back and keep that trial too.")
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

    private static JsonArray Listed(IEnumerable<string> texts) => new([.. texts.Select(text => (JsonNode)text)]);

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
        var rows = trials.Select((t, i) => (IReadOnlyList<string>)[$"{i + 1}", .. t.Inputs, .. t.Outcomes, i == 0 ? "" : Moved(Changed(trials[i - 1], t))]);
        _table.Set(("value", trials.Count == 0
            ? $"<p>{Html.E(Worded($"No trial is kept yet."))}</p>"
            : Html.Table(Worded($"My trials"), [Worded($"Trial"), .. _inputs.Select(c => c.Label), .. _outcomes.Select(o => o.Heading), Worded($"Moved since the trial before")], rows, headedRows: true)));
    }

    private static string Moved(IReadOnlyList<string> changed) => string.Join(Worded($" and "), changed) + (changed.Count > 1 ? Worded($": two things at once") : "");

    private void Record() => Host.Record(RecordKey, new JsonArray([.. Trials.Select(t => (JsonNode)new JsonObject
    {
        ["inputs"] = Listed(t.Inputs),
        ["outcomes"] = Listed(t.Outcomes),
    })]));
}
