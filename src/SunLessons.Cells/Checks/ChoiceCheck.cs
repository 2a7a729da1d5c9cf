using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Checks;

/// <summary>A question with answers to choose from; each has its own reply.</summary>
public sealed class ChoiceCheck : Check
{
    private readonly IReadOnlyList<AnswerOption> _options;
    private readonly Part _field;
    private int? _chosen;

    internal ChoiceCheck(Lesson lesson, string key, string question, IReadOnlyList<AnswerOption> options, IReadOnlyList<string> hints, string solution)
        : base(lesson, key, () => question, hints, () => solution)
    {
        if (options.Count < 2 || options.Count(o => o.State == CheckState.Right) == 0 || options.Any(o => string.IsNullOrWhiteSpace(o.Reply))
            || options.Select(o => o.Text).Distinct().Count() != options.Count)
        {
            throw new ArgumentException($"Check '{key}' needs at least 2 different answers, one of them right, and a reply to each.", nameof(options));
        }

        _options = options;
        var kept = options.ToList().FindIndex(o => o.Text == KeptAnswer);
        _chosen = kept >= 0 ? kept : null;
        _field = Build.Options(Host, "RadioButtonsModel", Worded($"My answer"), question, options.Select(o => o.Text), _chosen, chosen =>
        {
            if (chosen >= 0 && chosen < _options.Count)
            {
                _chosen = chosen;
                Typed();
            }
        });
        if (WasJudged && _chosen is not null)
        {
            Answered(counts: false);
        }
    }

    /// <summary>The answers to choose from.</summary>
    public IReadOnlyList<AnswerOption> Options => _options;

    private protected override Part Field => _field;

    private protected override string AnswerText => _chosen is { } index ? _options[index].Text : "";

    private protected override Judgement Judge()
    {
        if (_chosen is not { } index)
        {
            return Judgement.Unread(Worded($"Choose one of the answers first."));
        }

        var option = _options[index];
        var begin = option.State switch { CheckState.Right => Worded($"Right."), CheckState.Nearly => Worded($"Nearly."), _ => Worded($"Not yet.") };
        var wrong = option.State == CheckState.Right ? null : option.Text;
        return new(option.State, $"{begin} {option.Reply}", wrong, wrong);
    }
}
