using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using SunLessons.Notebooks.Authoring;
using SunLessons.Notebooks.Review;

namespace SunLessons.Notebooks.Tests.Review;

/// <summary>
/// British spelling of what a learner reads, by the program hunspell with its dictionary en_GB (Debian packages hunspell and hunspell-en-gb);
/// names that it cannot know stand in words.txt beside this file.
/// </summary>
[Trait("needs", "spelling")]
public partial class SpellingTests
{
    private static readonly string OwnWords = Path.Combine(Path.GetDirectoryName(LessonsTests.Shelf.Root)!, "tests", "SunLessons.Notebooks.Tests", "Review", "words.txt");

    public static TheoryData<string> Ids() => LessonsTests.Ids();

    [GeneratedRegex(@"(?<![\p{L}\d])\p{L}+(?:['’]\p{L}+)*")]
    private static partial Regex Word();

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

    // A word that no lesson uses any more could hide a slip of the pen.
    [Fact]
    public void Each_of_our_own_words_is_used_in_a_lesson()
    {
        var used = LessonsTests.Shelf.Lessons().SelectMany(lesson => Texts(lesson.ReadNotebook())).SelectMany(text => Word().Matches(text)).Select(word => word.Value).ToHashSet();
        Assert.Empty(Own().Except(used));
    }

    private static string[] Own() => [.. File.ReadAllLines(OwnWords).Where(line => line.Length > 0 && line[0] != '#')];

    /// <summary>What a reader meets: prose of the cells, and the sentences in their C#.</summary>
    private static IEnumerable<string> Texts(Notebook lesson) =>
        lesson.Cells.SelectMany(cell => cell.Language == "csharp" ? Sentences(cell.Source) : Prose.Of(cell));

    // Keys of one word are no text; a pattern for a date or a number is none either.
    private static IEnumerable<string> Sentences(string code) =>
        CSharpSyntaxTree.ParseText(code, new CSharpParseOptions(kind: SourceCodeKind.Script)).GetRoot().DescendantTokens()
            .Where(token => token.IsKind(SyntaxKind.StringLiteralToken) || token.IsKind(SyntaxKind.InterpolatedStringTextToken))
            .Where(token => token.Parent?.Parent?.Parent?.Parent is not InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Name.Identifier.Text: "ToString" } })
            .Select(token => token.ValueText)
            .Where(text => text.Contains(' ') || (text.Length > 0 && char.IsUpper(text[0])));

    private static async Task<IReadOnlyList<string>> UnknownAsync(IEnumerable<string> texts)
    {
        string[] words = [.. texts.SelectMany(text => Word().Matches(text)).Select(word => word.Value.Replace('’', '\'')).Distinct().Except(Own())];
        var start = new ProcessStartInfo("hunspell", ["-d", "en_GB", "-i", "utf-8", "-l"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            StandardOutputEncoding = Encoding.UTF8,
        };
        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        await process.StandardInput.WriteAsync(string.Join('\n', words) + "\n");
        process.StandardInput.Close();
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(1));
        await process.WaitForExitAsync(patience.Token);
        Assert.Equal((0, ""), (process.ExitCode, await errors));
        return [.. (await output).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
    }
}
