using System.Text.Json.Nodes;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Predictions;

/// <summary>A few words of the learner's own, such as why a prediction and its outcome differ. Kept in the record, judged by nobody.</summary>
public sealed class Explanation : Shown
{
    // A record is kept in a notebook's metadata: some pages of text are enough, and a pasted book is not.
    private const int MostLetters = 4000;
    private readonly Part _words;
    private readonly Part _field;
    private volatile string _text;

    internal Explanation(Lesson lesson, string key, string question)
        : base(lesson, key)
    {
        Question = question;
        _text = Json.Text(lesson.Recorded(RecordKey)) ?? "";
        _words = Build.Html(Host, Html.Question(question), "question");
        _field = Build.Text(Host, Worded($"My words"), question, _text, Worded($"because ..."), OnTyped);
    }

    /// <summary>What is asked.</summary>
    public string Question { get; }

    /// <summary>What the learner wrote; empty before.</summary>
    public string Text => _text;

    /// <inheritdoc/>
    public override string PlainText => _text.Length == 0 ? Question : $"{Question} {_text}";

    private string RecordKey => "explanation:" + Key;

    internal override Part MakeRoot() => Build.Box(Host, "explanation", [_words, _field], Key);

    internal override void Retire()
    {
        base.Retire();
        _words.Retire();
        _field.Retire();
    }

    private void OnTyped(string text)
    {
        _text = text.Length <= MostLetters ? text : text[..MostLetters];
        if (_text.Length < text.Length)
        {
            _field.Insist("value", _text);
        }

        Host.Record(RecordKey, JsonValue.Create(_text));
    }
}
