using System.Text.RegularExpressions;

namespace SunLessons.Notebooks.Review;

/// <summary>What a C# cell makes, read from its text without a run: calls of the lesson's own words, such as <c>NumberCheck("key", ...)</c>.</summary>
internal static partial class CellCalls
{
    /// <summary>The words that make a control that a learner moves.</summary>
    public static readonly IReadOnlyList<string> Controls = ["Number", "Day", "Hour", "Date", "DialShows", "Choice", "Switch", "Town"];

    [GeneratedRegex(@"^\s*//.*$", RegexOptions.Multiline)]
    private static partial Regex CommentLine();

    [GeneratedRegex(@"(?<!\w)(\w+)\(\s*\$?""")]
    private static partial Regex Keyed();

    /// <summary>How often a cell calls one of the words with a text as its first argument: its key.</summary>
    public static int Keyed(NotebookCell cell, params IReadOnlyList<string> words) =>
        cell.Language == "csharp" ? Keyed().Matches(WithoutComments(cell)).Count(match => words.Contains(match.Groups[1].Value)) : 0;

    /// <summary>Whether a C# cell has this text in it, comments aside.</summary>
    public static bool Has(NotebookCell cell, string text) => cell.Language == "csharp" && WithoutComments(cell).Contains(text, StringComparison.Ordinal);

    /// <summary>How often a C# cell has this text in it, comments aside.</summary>
    public static int Count(NotebookCell cell, string text) => cell.Language == "csharp" ? WithoutComments(cell).Split(text).Length - 1 : 0;

    private static string WithoutComments(NotebookCell cell) => CommentLine().Replace(cell.Source, "");
}
