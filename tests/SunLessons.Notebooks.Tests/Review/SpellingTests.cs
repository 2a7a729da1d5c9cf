using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using SunLessons.Notebooks.Authoring;
using SunLessons.Notebooks.Review;
using SunLessons.Words;

namespace SunLessons.Notebooks.Tests.Review;

/// <summary>
/// British and Spanish spelling of what a learner reads, by the program hunspell with its dictionaries en_GB and es_ES (Debian packages hunspell,
/// hunspell-en-gb and hunspell-es); names that they cannot know stand in words.txt and words.es.txt beside this file.
/// </summary>
[Trait("needs", "spelling")]
public partial class SpellingTests
{
    private static readonly string OwnWords = Path.Combine(Path.GetDirectoryName(LessonsTests.Shelf.Root)!, "tests", "SunLessons.Notebooks.Tests", "Review");

    public static TheoryData<string> Ids() => LessonsTests.Ids();

    [Fact]
    public async Task The_dictionary_is_there_and_is_British() =>
        Assert.Equal(["color", "neighbor", "traveled", "shaddow"], await UnknownAsync(["colour neighbour travelled shadow metre", "color neighbor traveled shaddow"]));

    [Theory]
    [MemberData(nameof(Ids))]
    public async Task The_words_of_a_lesson_are_spelt_as_in_Britain(string id) => Assert.Empty(await UnknownAsync(Texts(LessonsTests.Shelf.Find(id).ReadNotebook())));

    [Fact]
    public async Task So_are_those_of_the_template_and_of_the_table_of_misconceptions()
    {
        string folder = Samples.NewFolder();
        Assert.Empty(await UnknownAsync(Texts(Notebook.Read(NewLesson.Write(Path.Combine(folder, "a-blunt-shadow"))))));
        Directory.Delete(folder, recursive: true);
        Assert.Empty(await UnknownAsync(Misconceptions.All.SelectMany(idea => new[] { idea.Belief, idea.ShownBy })));
    }

    [Fact]
    public async Task The_Spanish_dictionary_is_there() =>
        Assert.Equal(["sonbra", "relog", "mediodia"], await UnknownAsync(["La sombra del estilo, la hora oficial", "sonbra relog mediodia"], "es"));

    [Theory]
    [MemberData(nameof(TranslationTests.Translations), MemberType = typeof(TranslationTests))]
    public async Task The_words_of_a_translated_lesson_are_spelt_right(string id)
    {
        Lesson lesson = LessonsTests.Shelf.Find(id);

        // Titles of books and papers stay in their own language.
        Assert.Empty(await UnknownAsync(Texts(lesson.ReadNotebook(), withSources: false), lesson.Language));
    }

    [Fact]
    public async Task So_are_those_of_the_program_in_Spanish()
    {
        WordTable spanish = WordTable.In("es");
        Assert.Empty(await UnknownAsync(spanish.Keys.Where(key => !key.StartsWith("culture.", StringComparison.Ordinal)).Select(key => Place().Replace(spanish[key], " ")), "es"));
    }

    [GeneratedRegex(@"\{\d+\}|--[a-z-]+")]
    private static partial Regex Place();

    [Theory]
    [InlineData("es")]
    public void Each_word_of_another_languages_list_is_used(string language)
    {
        WordTable words = WordTable.In(language);
        var used = LessonsTests.Shelf.Lessons(language).Where(lesson => lesson.Language == language).SelectMany(lesson => Texts(lesson.ReadNotebook()).Append(lesson.Title).Append(lesson.Summary)).Concat(words.Keys.Select(key => words[key]))
            .SelectMany(SpellingDictionary.WordsOf).ToHashSet();
        Assert.Empty(Own(language).Except(used));
    }

    // A word that no lesson uses any more could hide a slip of the pen.
    [Fact]
    public void Each_of_our_own_words_is_used_in_a_lesson()
    {
        var used = LessonsTests.Shelf.Lessons().SelectMany(lesson => Texts(lesson.ReadNotebook())).SelectMany(SpellingDictionary.WordsOf).ToHashSet();
        Assert.Empty(Own().Except(used));
    }

    private static string[] Own(string language = LessonShelf.FirstLanguage) => [.. File.ReadAllLines(Path.Combine(OwnWords, language == LessonShelf.FirstLanguage ? "words.txt" : $"words.{language}.txt")).Where(line => line.Length > 0 && line[0] != '#')];

    /// <summary>What a reader meets: prose of the cells, and the sentences in their C#.</summary>
    private static IEnumerable<string> Texts(Notebook lesson, bool withSources = true) =>
        lesson.Cells.Where(cell => withSources || cell.Role != "sources").SelectMany(cell => cell.Language == "csharp" ? Sentences(cell.Source) : Prose.Of(cell));

    // Keys of one word are no text; a pattern for a date or a number is none either.
    private static IEnumerable<string> Sentences(string code) =>
        CSharpSyntaxTree.ParseText(code, new CSharpParseOptions(kind: SourceCodeKind.Script)).GetRoot().DescendantTokens()
            .Where(token => token.IsKind(SyntaxKind.StringLiteralToken) || token.IsKind(SyntaxKind.InterpolatedStringTextToken))
            .Where(token => token.Parent?.Parent?.Parent?.Parent is not InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Name.Identifier.Text: "ToString" } })
            .Select(token => token.ValueText)
            .Where(text => text.Contains(' ') || (text.Length > 0 && char.IsUpper(text[0])));

    private static async Task<IReadOnlyList<string>> UnknownAsync(IEnumerable<string> texts, string language = LessonShelf.FirstLanguage)
    {
        SpellingDictionary? dictionary = await SpellingDictionary.OfAsync(language);
        Assert.NotNull(dictionary);
        return await dictionary.UnknownAsync(texts.SelectMany(SpellingDictionary.WordsOf).Except(Own(language)));
    }
}
