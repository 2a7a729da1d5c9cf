using AngleSharp.Dom;
using AngleSharp.Html.Parser;

namespace SunLessons.Publishing.Tests.Support;

/// <summary>Published files as documents to be asked.</summary>
internal static class Html
{
    /// <summary>A published file; what a page shows without script is part of it.</summary>
    public static IDocument Read(PublishedLessons published, string file) => new HtmlParser().ParseDocument(File.ReadAllText(Path.Combine(published.Folder, file)));

    /// <summary>Tables with a caption, row by row as text.</summary>
    public static IReadOnlyList<string> Table(this IDocument document, string caption)
    {
        var table = document.QuerySelectorAll("table").FirstOrDefault(table => table.QuerySelector("caption")?.TextContent == caption);
        Assert.True(table is not null, $"No table \"{caption}\" in \"{document.Title}\".");
        return [.. table.QuerySelectorAll("tr").Select(row => string.Join(" | ", row.Children.Select(cell => cell.TextContent)))];
    }
}
