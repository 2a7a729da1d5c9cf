using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using SunLessons.App.Tests.Support;
using SunLessons.Cells;
using SunLessons.Cells.Checks;
using SunLessons.Readings;
using SunLessons.Words;

namespace SunLessons.Publishing.Tests.Languages;

/// <summary>That every word has its translation: what a language lacks would be said in English in the middle of a lesson.</summary>
public sealed partial class SpokenSentencesTests
{
    public static TheoryData<string> OtherLanguages => [.. WordTable.Languages.Where(language => language != WordTable.First)];

    [Theory]
    [MemberData(nameof(OtherLanguages))]
    public void Every_key_of_the_pages_is_translated(string language)
    {
        Assert.Empty(Keys(WordTable.First).Except(Keys(language)).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(OtherLanguages))]
    public void Every_sentence_in_the_code_is_translated(string language)
    {
        Assert.Empty(Sentences().Except(Keys(language)).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(OtherLanguages))]
    public void A_language_has_no_sentence_that_nobody_says(string language)
    {
        var said = Sentences().Concat(Keys(WordTable.First)).ToHashSet();
        Assert.Empty(Keys(language).Where(key => !key.StartsWith("science: ", StringComparison.Ordinal) && !key.StartsWith("program: ", StringComparison.Ordinal)).Except(said).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(OtherLanguages))]
    public void A_translation_has_the_places_of_its_sentence(string language)
    {
        var table = WordTable.In(language);
        Assert.All(table.Keys, key =>
        {
            var english = key.Contains(' ', StringComparison.Ordinal) ? key : WordTable.In(WordTable.First)[key];
            Assert.Equal(Places(english), Places(table[key]));
        });
    }

    [Fact]
    public void The_sentences_are_found_in_the_code()
    {
        // If the reading of the code broke, the tests above would hold for an empty list.
        Assert.Contains("Hint {0} of {1}", Sentences());
        Assert.Contains("{0}: from {1} at {2} to {3} at {4}.", Sentences());
        Assert.Contains("Go on with the lesson", Sentences());
        Assert.Contains("{0} Your answers and your cells are kept. Start the lesson again to go on.", Sentences());
        Assert.True(Sentences().Count > 100);
    }

    [Fact]
    public void No_part_of_a_page_has_words_of_its_own()
    {
        var own = Files("*.razor", "SunLessons.Web").SelectMany(file => OwnWords().Matches(Between().Replace(File.ReadAllText(file).Split("@code {")[0], "")).Select(match => $"{Path.GetFileName(file)}: {match.Value.Trim()}"))
            .Where(words => !words.EndsWith(": SunLessons", StringComparison.Ordinal));
        Assert.Empty(own);
    }

    [Fact]
    public void Every_key_that_a_script_or_a_part_of_a_page_asks_for_is_there()
    {
        var scripts = Files("*.js", "SunLessons.Publishing").SelectMany(file => AskedByScript().Matches(File.ReadAllText(file))).Select(match => match.Groups["key"].Value).ToHashSet();
        var parts = Files("*.razor", "SunLessons.Web").SelectMany(file => AskedByPart().Matches(File.ReadAllText(file))).Select(match => match.Groups["key"].Value).ToHashSet();
        Assert.Contains("place.change", scripts);
        Assert.Contains("class.wrong", scripts);
        Assert.Contains("place.change", parts);
        Assert.Empty(scripts.Union(parts).Except(Keys(WordTable.First)).Order(StringComparer.Ordinal));
    }

    /// <summary>What code says by Worded($"..."), as the runtime makes a key of it; the names of slips, steps and units; and the labels that verbs have by themselves.</summary>
    private static HashSet<string> Sentences()
    {
        var code = Files("*.cs", "SunLessons.Cells", "SunLessons.Figures", "SunLessons.Web").Select(File.ReadAllText).SelectMany(text => CSharpSyntaxTree.ParseText(text).GetRoot().DescendantNodes().OfType<InvocationExpressionSyntax>());
        // In a part of a page the same calls stand between tags.
        var parts = Files("*.razor", "SunLessons.Web").Select(File.ReadAllText).SelectMany(text => Call().Matches(text).Select(call => SyntaxFactory.ParseExpression(text[call.Index..], consumeFullText: false).DescendantNodesAndSelf().OfType<InvocationExpressionSyntax>().First()));
        var spoken = code.Concat(parts)
            .Where(call => call.Expression is IdentifierNameSyntax { Identifier.Text: "Worded" } or MemberAccessExpressionSyntax { Name.Identifier.Text: "Worded" } && call.ArgumentList.Arguments[0].Expression is InterpolatedStringExpressionSyntax)
            .Select(call => Key(Assert.IsType<InterpolatedStringExpressionSyntax>(call.ArgumentList.Arguments[0].Expression)));
        var slips = typeof(UsualSlips).GetProperties().Select(property => ((SlipKind)property.GetValue(null)!).Name);
        var steps = Enum.GetNames<StepName>().Select(name => name.ToLowerInvariant());
        var labels = typeof(Say).GetMethods().SelectMany(method => method.GetParameters())
            .Where(parameter => parameter is { Name: "label", HasDefaultValue: true }).Select(parameter => (string)parameter.DefaultValue!);
        return [.. spoken, .. slips, .. steps, .. labels, .. Units()];
    }

    private static IEnumerable<string> Files(string pattern, params string[] projects) => projects
        .SelectMany(project => Directory.EnumerateFiles(RepositoryFiles.Path("src", project), pattern, SearchOption.AllDirectories))
        .Where(file => !file.Split(Path.DirectorySeparatorChar).Contains("obj"));

    private static IEnumerable<string> Units() => CSharpSyntaxTree.ParseText(File.ReadAllText(RepositoryFiles.Path("src", "SunLessons.Cells", "Checks", "AnswerUnit.cs"))).GetRoot()
        .DescendantNodes().OfType<ImplicitObjectCreationExpressionSyntax>().Select(unit => ((LiteralExpressionSyntax)unit.ArgumentList.Arguments[3].Expression).Token.ValueText);

    private static string Key(InterpolatedStringExpressionSyntax text)
    {
        var place = 0;
        return string.Concat(text.Contents.Select(content => content switch
        {
            InterpolatedStringTextSyntax words => words.TextToken.ValueText,
            InterpolationSyntax value => $"{{{place++}{value.AlignmentClause}{value.FormatClause}}}",
            _ => "",
        }));
    }

    private static IEnumerable<string> Keys(string language) => WordTable.In(language).Keys;

    private static IReadOnlyList<string> Places(string text) => [.. Place().Matches(text).Select(match => match.Value).Distinct().Order(StringComparer.Ordinal)];

    [GeneratedRegex(@"\bWorded\(")]
    private static partial Regex Call();

    // C# that stands between tags without a sign of its own.
    [GeneratedRegex(@"^\s*(case [^\n]*:|break;)\s*$", RegexOptions.Multiline)]
    private static partial Regex Between();

    // Words between two tags, or in a label or another attribute that is read aloud or shown.
    [GeneratedRegex("""(?<=</?[a-zA-Z][^<>]*>)[^<>@{}]*\p{L}{2}[^<>@{}]*(?=<)|(?<=\b(aria-label|title|placeholder|alt|Label)=")[^"@]*\p{L}[^"]*""")]
    private static partial Regex OwnWords();

    [GeneratedRegex("""\bwords\("(?<key>[^"]+)"|["'](?<key>(cell|class|number|page|place|table|talk)\.[a-z.]+)["']""")]
    private static partial Regex AskedByScript();

    [GeneratedRegex("""\b(Word\(|Words\[|Say\()"(?<key>[^"]+)" ?""")]
    private static partial Regex AskedByPart();

    [GeneratedRegex(@"\{\d+[^}]*\}")]
    private static partial Regex Place();
}
