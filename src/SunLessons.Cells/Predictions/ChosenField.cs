using SunLessons.Cells.Hosting;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Predictions;

/// <summary>One of several answers.</summary>
internal sealed class ChosenField : PredictionField
{
    private readonly IReadOnlyList<string> _options;
    private readonly Part _list;
    private int? _chosen;

    public ChosenField(IWidgetHost host, string question, IReadOnlyList<string> options)
    {
        _options = options;
        _list = Build.Options(host, "RadioButtonsModel", Worded($"My prediction"), question, options, null, chosen => _chosen = chosen >= 0 && chosen < options.Count ? chosen : _chosen);
    }

    public override IReadOnlyList<string> Options => _options;

    public override IReadOnlyList<Part> Parts => [_list];

    public override string Example => _options[0];

    public override PredictionAnswer Read() => _chosen is { } index
        ? new PredictionAnswer(_options[index], [])
        : PredictionAnswer.Not(Worded($"Choose one of the answers first; a guess is welcome."));

    public override bool Restore(string answer)
    {
        var index = _options.ToList().IndexOf(answer);
        if (index < 0)
        {
            return false;
        }

        _chosen = index;
        _list.Set(("index", index));
        return true;
    }
}
