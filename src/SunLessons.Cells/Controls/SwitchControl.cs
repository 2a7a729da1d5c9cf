using System.Text.Json.Nodes;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Controls;

/// <summary>Something that is on or off.</summary>
public sealed class SwitchControl : Control
{
    private readonly Part _box;
    private volatile bool _on;

    internal SwitchControl(Lesson lesson, string key, string label, bool start)
        : base(lesson, key, label)
    {
        Start = start ? 1 : 0;
        _on = Json.Truth(lesson.Recorded(RecordKey)) ?? start;
        _box = new Part(
            Host,
            "CheckboxModel",
            new JsonObject
            {
                ["value"] = _on,
                ["description"] = label,
                ["disabled"] = false,
                ["layout"] = Build.Wide,
                ["indent"] = false,
                ["_sunlessons_role"] = "switch",
                ["_sunlessons_key"] = key,
                ["_sunlessons_label"] = label,
            },
            OnChange);
    }

    /// <summary>Whether it is on.</summary>
    public bool IsOn => Supposition.Of(this) is { } supposed ? supposed != 0 : _on;

    /// <inheritdoc/>
    public override string Position => IsOn ? Worded($"on") : Worded($"off");

    internal override double Start { get; }

    internal override IReadOnlyList<double> Stations => [0, 1];

    internal override IEnumerable<Part> Moving => [_box];

    /// <summary>A switch stands for its position in a condition.</summary>
    public static implicit operator bool(SwitchControl control) => control?.IsOn ?? throw new ArgumentNullException(nameof(control));

    internal override Part MakeRoot() => _box;

    private protected override void CopyFrom(Control successor) => _on = ((SwitchControl)successor).IsOn;

    private void OnChange(JsonObject change)
    {
        if (!change.ContainsKey("value"))
        {
            return;
        }

        if (Json.Truth(change["value"]) is not { } wanted || IsLocked)
        {
            _box.Insist("value", _on);
            return;
        }

        _on = wanted;
        Moved(wanted);
    }
}
