using System.Text.Json.Nodes;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Controls;

/// <summary>One of several named things.</summary>
public class ChoiceControl : Control
{
    private readonly Lock _gate = new();
    private readonly Part _list;
    private IReadOnlyList<string> _options;
    private int _index;

    internal ChoiceControl(Lesson lesson, string key, string label, IReadOnlyList<string> options, int start = 0)
        : base(lesson, key, label)
    {
        if (options.Count < 2 || options.Distinct().Count() != options.Count)
        {
            throw new ArgumentException($"Choice '{key}' offers {options.Count} names, or one of them twice. Give at least 2 different names.", nameof(options));
        }

        (_options, Start) = (options, start);
        var kept = Json.Text(lesson.Recorded(RecordKey)) is { } name ? IndexOf(name) : -1;
        _index = kept >= 0 ? kept : start;
        _list = Build.Options(Host, "DropdownModel", label, label, options, _index, OnChange);
        _list.Set(("_sunlessons_role", "choice"), ("_sunlessons_key", key));
    }

    /// <summary>The names, in order.</summary>
    public IReadOnlyList<string> Options
    {
        get
        {
            lock (_gate)
            {
                return _options;
            }
        }
    }

    /// <summary>Which one is chosen, 0 for the first.</summary>
    public int Index
    {
        get
        {
            if (Supposition.Of(this) is { } supposed)
            {
                return (int)supposed;
            }

            lock (_gate)
            {
                return _index;
            }
        }
    }

    /// <summary>The name that is chosen.</summary>
    public string Value
    {
        get
        {
            lock (_gate)
            {
                return _options[Index];
            }
        }
    }

    /// <inheritdoc/>
    public override string Position => Value;

    internal override double Start { get; }

    internal override IReadOnlyList<double> Stations => [.. Enumerable.Range(0, Options.Count).Select(i => (double)i)];

    internal override IEnumerable<Part> Moving => [_list];

    internal override Part MakeRoot() => _list;

    /// <summary>The position of a name; null when it is none of them.</summary>
    internal double? PositionOf(string name) => IndexOf(name) is var index and >= 0 ? index : null;

    /// <summary>Finds a recorded name among the options, −1 when it is none of them.</summary>
    private protected virtual int IndexOf(string name) => _options.ToList().IndexOf(name);

    /// <summary>What the record keeps for the chosen option.</summary>
    private protected virtual string RecordName => Value;

    private protected override void CopyFrom(Control successor)
    {
        var other = (ChoiceControl)successor;
        lock (_gate)
        {
            // The names may have been edited: then the position counts, as far as there is one.
            _index = _options.ToList().IndexOf(other.Value) is var same and >= 0 ? same : Math.Min(other.Index, _options.Count - 1);
        }
    }

    private protected void Rename(IReadOnlyList<string> options)
    {
        lock (_gate)
        {
            _options = options;
        }

        _list.Set(("_options_labels", Build.Labels(options)), ("index", Index));
    }

    private void OnChange(int chosen)
    {
        if (chosen < 0 || chosen >= Options.Count || IsLocked)
        {
            _list.Insist("index", Index);
            return;
        }

        lock (_gate)
        {
            _index = chosen;
        }

        Moved(JsonValue.Create(RecordName));
    }
}
