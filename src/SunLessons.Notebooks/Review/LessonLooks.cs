using System.Text.RegularExpressions;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using SunLessons.Notebooks.Markup;

namespace SunLessons.Notebooks.Review;

/// <summary>What a reader who does not see the drawing meets (WCAG 2.2, 1.1.1: text in its place), where links lead, and how much moves at once.</summary>
internal static partial class LessonLooks
{
    // Cognitive load (Sweller): a step has no more than this to move.
    private const int MostControls = 3;

    private static readonly string[] EmptyWords = ["here", "click here", "this", "link", "this link", "more"];

    [GeneratedRegex("""<img\b(?![^>]*\balt\s*=\s*["']\s*[^\s"'])[^>]*>""", RegexOptions.IgnoreCase)]
    private static partial Regex PictureWithoutWords();

    [GeneratedRegex("""<svg\b(?![^>]*\baria-label\s*=\s*["']\s*[^\s"'])(?!.*?<title>\s*\S)[^>]*>""", RegexOptions.IgnoreCase | RegexOptions.Singleline)]
    private static partial Regex DrawingWithoutWords();

    public static IEnumerable<ReviewRemark> Review(Notebook lesson) => lesson.Cells.SelectMany(Words).Concat(Controls(lesson));

    private static IEnumerable<ReviewRemark> Words(NotebookCell cell)
    {
        if (cell.Language == "csharp")
        {
            int figures = CellCalls.Count(cell, "Figure.Titled(");
            int sentences = CellCalls.Count(cell, ".Says(");
            if (figures > sentences)
            {
                yield return new(cell.Id, "alt-text", $"{figures} figures begin here and {sentences} say their result; end each with .Says($\"...\"), a sentence for those who do not see the figure.");
            }

            yield break;
        }

        if (PictureWithoutWords().IsMatch(cell.Source) || DrawingWithoutWords().IsMatch(cell.Source))
        {
            yield return new(cell.Id, "alt-text", "A drawing has no words in its place; give an img an alt, and an svg an aria-label or a title, that says what is to be seen.");
        }

        if (cell.Language != "markdown")
        {
            yield break;
        }

        MarkdownDocument document = LessonMarkup.Parse(cell.Source);
        string[] headings = [.. document.Descendants<HeadingBlock>().Select(heading => heading.GetAttributes().Id).OfType<string>()];
        foreach (LinkInline link in document.Descendants<LinkInline>())
        {
            string url = link.Url ?? "";
            string text = Prose.Text(link).Trim();
            if (link.IsImage)
            {
                if (text.Length == 0)
                {
                    yield return new(cell.Id, "alt-text", $"The picture {url} has no words in its place; write ![what is to be seen]({url}).");
                }

                if (url.Contains("://", StringComparison.Ordinal))
                {
                    yield return new(cell.Id, "links", $"The picture {url} comes from the network, and a lesson works without one; draw it in a cell.");
                }
            }
            else if (!url.StartsWith("#value:", StringComparison.Ordinal))
            {
                if (!(url.StartsWith("https://", StringComparison.Ordinal) && Uri.IsWellFormedUriString(url, UriKind.Absolute)) && !(url.StartsWith('#') && headings.Contains(url[1..])))
                {
                    yield return new(cell.Id, "links", $"The link \"{text}\" leads to \"{url}\", and a link leads to https://..., to a heading of its own cell or to #value:its-name; mend the address.");
                }

                if (text.Length == 0 || EmptyWords.Contains(text.ToLowerInvariant()))
                {
                    yield return new(cell.Id, "links", $"The link to {url} reads \"{text}\"; let its words say where it leads.");
                }
            }
        }
    }

    /// <summary>A step is a run of experiment cells from one heading to the next.</summary>
    private static IEnumerable<ReviewRemark> Controls(Notebook lesson)
    {
        int moved = 0;
        foreach (NotebookCell cell in lesson.Cells)
        {
            bool heading = cell.Language == "markdown" && LessonMarkup.Parse(cell.Source).Descendants<HeadingBlock>().Any();
            if (cell.Role != "experiment" || heading)
            {
                moved = 0;
            }

            if (cell.Role != "experiment")
            {
                continue;
            }

            int here = CellCalls.Keyed(cell, CellCalls.Controls);
            moved += here;
            if (here > 0 && moved > MostControls)
            {
                yield return new(cell.Id, "controls", $"This step has {moved} controls, and at most {MostControls} move at once; give some of them a fixed value, or begin a new step with a heading.");
            }

            if (here > 0 && !CellCalls.Has(cell, "after:") && !CellCalls.Has(cell, ".Unlocks("))
            {
                yield return new(cell.Id, "guess-first", "The controls are awake before anything is foretold; write after: guess in each of them.");
            }
        }
    }
}
