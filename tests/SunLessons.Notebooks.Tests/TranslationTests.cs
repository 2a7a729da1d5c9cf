using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using SunLessons.Cells.Checks;
using SunLessons.Kernel.Rehearsing;
using SunLessons.Notebooks.Review;

namespace SunLessons.Notebooks.Tests;

/// <summary>A translated lesson is the same lesson: the same cells, roles and C#, with other words in it.</summary>
public sealed class TranslationTests
{
    public static TheoryData<string> Translations() => [.. LessonsTests.Shelf.Lessons().SelectMany(LessonsTests.Shelf.Translations).Select(lesson => lesson.Id)];

    [Fact]
    public void The_lesson_on_longitude_is_there_in_Spanish()
    {
        Assert.Equal(["en", "es"], LessonsTests.Shelf.Languages());
        Lesson spanish = Assert.Single(LessonsTests.Shelf.Lessons("es"), lesson => lesson.Number == 6);
        Assert.Equal(("your-own-noon-es", "es", "Tu propio mediodía"), (spanish.Id, spanish.Language, spanish.Title));

        // What is not translated comes in English.
        Assert.Equal(LessonsTests.Shelf.Lessons().Select(lesson => lesson.Number), LessonsTests.Shelf.Lessons("es").Select(lesson => lesson.Number));
    }

    [Theory]
    [MemberData(nameof(Translations))]
    public void It_has_the_same_cells_with_the_same_roles(string id)
    {
        (Notebook lesson, Notebook translation) = Pair(id);
        Assert.Equal(lesson.Cells.Select(cell => (cell.Id, cell.Type, cell.Role)), translation.Cells.Select(cell => (cell.Id, cell.Type, cell.Role)));
    }

    [Theory]
    [MemberData(nameof(Translations))]
    public void Its_code_is_the_same_apart_from_texts_and_comments(string id)
    {
        (Notebook lesson, Notebook translation) = Pair(id);
        string first = translation.Cells.First(cell => cell.Type == CellType.Code).Id;
        foreach (NotebookCell cell in lesson.Cells.Where(cell => cell.Type == CellType.Code))
        {
            string[] code = Code(translation.Cells.Single(other => other.Id == cell.Id).Source);

            // The first cell says the language before anything else.
            Assert.Equal(Code(cell.Source), cell.Id == first ? code.Skip(Code("Language(\"es\");").Length) : code);
        }

        Assert.StartsWith($"Language(\"{LessonsTests.Shelf.Find(id).Language}\");", translation.Cells.Single(cell => cell.Id == first).Source, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Translations))]
    public void It_keeps_every_rule_of_a_lesson_in_its_own_language(string id) =>
        Assert.Equal("", string.Join("\n", LessonReview.Review(LessonsTests.Shelf.Find(id).ReadNotebook())));

    [Theory]
    [MemberData(nameof(Translations))]
    public void Its_text_quotes_the_same_values(string id)
    {
        (Notebook lesson, Notebook translation) = Pair(id);
        static IEnumerable<string> Quoted(Notebook notebook) => notebook.Cells.Where(cell => cell.Type == CellType.Markdown)
            .SelectMany(cell => System.Text.RegularExpressions.Regex.Matches(cell.Source, @"\(#value:([a-z0-9-]+)\)").Select(match => $"{cell.Id} {match.Groups[1].Value}"));
        Assert.Equal(Quoted(lesson), Quoted(translation));
        Assert.NotEmpty(Quoted(translation));
    }

    [Theory]
    [MemberData(nameof(Translations))]
    public async Task It_runs_and_answers_as_the_lesson_does(string id)
    {
        await using Rehearsal translated = await Rehearsals.OfAsync(id);
        await using Rehearsal lesson = await Rehearsals.OfAsync(LessonsTests.Shelf.Lessons().Single(lesson => id.StartsWith(lesson.Id + "-", StringComparison.Ordinal)).Id);

        Assert.All(translated.Cells, cell => Assert.Null(cell.Problem));
        Assert.Equal(Answers(lesson), Answers(translated));
        Assert.Equal(lesson.All<ChoiceCheck>().Select(check => check.Key), translated.All<ChoiceCheck>().Select(check => check.Key));
    }

    [Fact]
    public async Task The_Spanish_text_quotes_its_numbers_as_the_cells_give_them()
    {
        await using Rehearsal run = await Rehearsals.OfAsync("your-own-noon-es");
        var values = run.Host.Outputs.Where(output => output.ContainsKey("application/vnd.sunlessons.value+json"))
            .ToDictionary(output => (string)output["application/vnd.sunlessons.value+json"]!["name"]!, output => (string)output["application/vnd.sunlessons.value+json"]!["text"]!);
        Assert.Equal("+94,9 min", values["vigo-step"]);
        Assert.Equal("−16,4 min", values["vigo-date-step"]);
        foreach (NotebookCell cell in LessonsTests.Shelf.Find("your-own-noon-es").ReadNotebook().Cells.Where(cell => cell.Type == CellType.Markdown))
        {
            foreach (System.Text.RegularExpressions.Match quote in System.Text.RegularExpressions.Regex.Matches(cell.Source, @"\[([^\]]+)\]\(#value:([a-z0-9-]+)\)"))
            {
                Assert.Equal(values[quote.Groups[2].Value], quote.Groups[1].Value);
            }
        }

        string told = string.Join('\n', run.Host.Outputs.Select(output => (string?)output["text/plain"]));
        Assert.Contains("suma 32,7 min: el cuadrante est&#225; al oeste del meridiano de referencia", told + string.Join('\n', run.Host.Channels.Select(channel => (string?)channel.State["value"]?.ToString())), StringComparison.Ordinal);
        Assert.DoesNotContain("No trial is kept yet", told, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Translations))]
    public void The_file_is_written_back_byte_for_byte(string id)
    {
        Lesson lesson = LessonsTests.Shelf.Find(id);
        Assert.Equal("valid", NotebookTests.NbformatSays(lesson.FilePath));
        Assert.Equal(File.ReadAllText(lesson.FilePath), lesson.ReadNotebook().ToJson());
    }

    private static IReadOnlyList<(string, double)> Answers(Rehearsal run)
    {
        run.Lesson.BecomeCurrent();
        return [.. run.All<NumberCheck>().Select(check => (check.Key, check.Problem().Answer))];
    }

    private static (Notebook Lesson, Notebook Translation) Pair(string id)
    {
        Lesson translation = LessonsTests.Shelf.Find(id);
        Lesson lesson = LessonsTests.Shelf.Lessons().Single(lesson => lesson.Number == translation.Number);
        return (lesson.ReadNotebook(), translation.ReadNotebook());
    }

    // Tokens without the words in them; the words of an interpolated text come in pieces of any number, so they are left out.
    private static string[] Code(string source) => [.. CSharpSyntaxTree.ParseText(source, CSharpParseOptions.Default.WithKind(SourceCodeKind.Script)).GetRoot().DescendantTokens()
        .Where(token => !token.IsKind(SyntaxKind.InterpolatedStringTextToken) && !token.IsKind(SyntaxKind.EndOfFileToken))
        .Select(token => token.IsKind(SyntaxKind.StringLiteralToken) ? "text" : token.Text)];
}
