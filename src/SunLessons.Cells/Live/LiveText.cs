using SunLessons.Cells.Controls;
using SunLessons.Cells.Parts;

namespace SunLessons.Cells.Live;

/// <summary>A sentence that follows its controls and the place.</summary>
public sealed class LiveText : LiveThing
{
    private readonly Func<string> _make;
    private readonly Part _part;
    private string _text = "";
    private bool _failed;

    internal LiveText(Lesson lesson, string key, Func<string> make, IReadOnlyList<Control> dependsOn)
        : base(lesson, key, dependsOn)
    {
        _make = make;
        Make();
        _part = Build.Html(Host, Markup(), "text");
        _part.Set(("_sunlessons_key", key));
    }

    /// <summary>The sentence as last computed.</summary>
    public override string PlainText => Volatile.Read(ref _text);

    internal override Part MakeRoot() => _part;

    private protected override void Compute()
    {
        Make();
        _part.Set(("value", Markup()));
    }

    private void Make()
    {
        try
        {
            Volatile.Write(ref _text, _make());
            _failed = false;
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            Volatile.Write(ref _text, PlainSentence.Of(error));
            _failed = true;
        }
    }

    private string Markup() => Html.Status(PlainText, _failed ? "problem" : "summary");
}
