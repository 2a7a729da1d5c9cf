using Microsoft.AspNetCore.Components;
using SunLessons.Words;

namespace SunLessons.Web.Languages;

/// <summary>A part of a page that says something, in the language of its page.</summary>
public abstract class WordedPart : ComponentBase
{
    /// <summary>The language of the page.</summary>
    [CascadingParameter]
    public LanguageCulture Culture { get; set; } = LanguageCulture.Of(WordTable.First);

    /// <summary>A sentence of the page in its language; English where the language lacks it.</summary>
    protected string Worded(FormattableString english) => Culture.Worded(english);

    /// <summary>Words that published pages say too, by key.</summary>
    protected string Word(string key) => Culture.Words[key];
}
