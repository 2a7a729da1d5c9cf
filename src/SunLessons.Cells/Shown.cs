using SunLessons.Cells.Hosting;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells;

/// <summary>Something that stands in a cell's output as a widget: a control, a live figure, a prediction, a check.</summary>
public abstract class Shown
{
    private Part? _root;

    private protected Shown(Lesson lesson, string key)
    {
        if (string.IsNullOrWhiteSpace(key) || key.AsSpan().ContainsAny(' ', ':', '\n'))
        {
            throw new ArgumentException($"The name '{key}' cannot be kept in a learner's record. Give a short name without spaces and colons, such as noon-clock.", nameof(key));
        }

        Lesson = lesson;
        Key = key;
    }

    /// <summary>The name under which the learner's record keeps it.</summary>
    public string Key { get; }

    /// <summary>What it says where no widget can be shown.</summary>
    public abstract string PlainText { get; }

    internal Lesson Lesson { get; }

    internal IWidgetHost Host => Lesson.Host;

    internal Part Root => _root ??= MakeRoot();

    internal abstract Part MakeRoot();

    /// <summary>Listens and computes no more: a cell was run again and made a successor of the same name.</summary>
    internal virtual void Retire() => _root?.Retire();

    /// <summary>A page was loaded again: what it learnt by messages alone has to be told once more.</summary>
    internal virtual void TellAgain()
    {
    }
}
