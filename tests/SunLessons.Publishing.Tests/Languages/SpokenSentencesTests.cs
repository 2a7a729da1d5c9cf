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
    public void Every_sentence_in_the_code_of_cells_and_figures_is_translated(string language)
    {
        Assert.Empty(Sentences().Except(Keys(language)).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(OtherLanguages))]
    public void A_language_has_no_sentence_that_nobody_says(string language)
    {
        var said = Sentences().Concat(Keys(WordTable.First)).ToHashSet();
        Assert.Empty(Keys(language).Where(key => !key.StartsWith("science: ", StringComparison.Ordinal)).Except(said).Order(StringComparer.Ordinal));
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
        Assert.True(Sentences().Count > 100);
    }

    /// <summary>What code says by Worded($"..."), as the runtime makes a key of it; the names of slips, steps and units; and the labels that verbs have by themselves.</summary>
    private static HashSet<string> Sentences()
    {
        var files = new[] { "SunLessons.Cells", "SunLessons.Figures" }
            .SelectMany(project => Directory.EnumerateFiles(RepositoryFiles.Path("src", project), "*.cs", SearchOption.AllDirectories))
            .Where(file => !file.Split(Path.DirectorySeparatorChar).Contains("obj"));
        var spoken = files.SelectMany(file => CSharpSyntaxTree.ParseText(File.ReadAllText(file)).GetRoot().DescendantNodes())
            .OfType<InvocationExpressionSyntax>()
            .Where(call => call.Expression is IdentifierNameSyntax { Identifier.Text: "Worded" })
            .Select(call => Key(Assert.IsType<InterpolatedStringExpressionSyntax>(call.ArgumentList.Arguments[0].Expression)));
        var slips = typeof(UsualSlips).GetProperties().Select(property => ((SlipKind)property.GetValue(null)!).Name);
        var steps = Enum.GetNames<StepName>().Select(name => name.ToLowerInvariant());
        var labels = typeof(Say).GetMethods().SelectMany(method => method.GetParameters())
            .Where(parameter => parameter is { Name: "label", HasDefaultValue: true }).Select(parameter => (string)parameter.DefaultValue!);
        return [.. spoken, .. slips, .. steps, .. labels, .. Units()];
    }

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

    [GeneratedRegex(@"\{\d+[^}]*\}")]
    private static partial Regex Place();
}
