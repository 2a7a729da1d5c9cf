using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Markdig.Syntax;
using SunLessons.Notebooks.Markup;

namespace SunLessons.Notebooks.Review;

/// <summary>
/// Checks a lesson's notebook against the house rules that need no run: every cell says its language and its role; the
/// safety box stands first; roles come in their order; one first-level heading and no level skipped; a number that somebody
/// computed stands in the text only as a link to a named value; no sentence about north and south without its condition;
/// formulas inside the subset that pages can draw; words in the place of every drawing; links that lead somewhere; at most three
/// controls a step, asleep until something is foretold; a reading level of grade 8 or below, or in Spanish a score of 65 or above (<see cref="ReadingLevel"/>); no stored
/// outputs. A lesson whose metadata says "finished": true has every part as well; one that does not is told by
/// <see cref="StillToWrite"/> what it lacks.
/// </summary>
public static partial class LessonReview
{
    private static readonly HashSet<string> Languages = ["csharp", "markdown", "html", "svg"];

    [GeneratedRegex(@"(?<![\w.,:])[−+\-±]?\d+(?:[.,]\d+)?\s?(?:°|º|′|″|%|min(?:ute)?s?\b|s\b|sec(?:ond)?s?\b|h\b|hours?\b|deg(?:ree)?s?\b|mm\b|cm\b|m\b|km\b|metres?\b)|\b\d{1,2}:\d{2}(?:[:.]\d+)?\b|(?<![\w.])[−+\-±]?\d+[.,]\d+")]
    private static partial Regex ComputedNumber();

    [GeneratedRegex(@"\bSun(?:\s+at\s+noon)?\s+(?:is|stands?|lies|sits|must\s+be)\s+(?:always\s+)?(?:due\s+|to\s+the\s+|in\s+the\s+|towards\s+the\s+)?(?:north|south)|\bshadows?\s+(?:at\s+noon\s+|always\s+)*(?:points?|falls?|lies?)\s+(?:due\s+|to\s+the\s+|towards?\s+(?:the\s+)?)?(?:north|south)|\bfac(?:e|es|ing)\s+(?:due\s+)?(?:north|south)\b|\b(?:summer|winter)\s+(?:is\s+in|starts\s+in|means)\s+(?:June|July|December|January)|\b(?:June|July|December|January)\s+is\s+(?:summer|winter)\b|\b(?:numbers?|hours?)\b.*\b(?:runs?|go(?:es)?)\s+(?:round\s+)?(?:anti)?clockwise\b", RegexOptions.IgnoreCase)]
    private static partial Regex Hemisphere();

    [GeneratedRegex(@"\b(?:if|where|when|while|outside|inside|between|north of|south of|northern|southern|hemisphere|tropics?|tropical|Troms[oø]|Vigo|Kathmandu|Nairobi|Darwin|Dunedin|Ushuaia|St\.? John|your own place|at this place)", RegexOptions.IgnoreCase)]
    private static partial Regex Condition();

    // What the safety box must say, by language.
    private static readonly Dictionary<string, string> SafetyWords = new(StringComparer.Ordinal) { ["en"] = "Never look at the Sun", ["es"] = "No mires nunca al Sol" };

    /// <summary>The language that a lesson is written in: "language" in the notebook's metadata, English without it.</summary>
    public static string LanguageOf(Notebook lesson) => lesson.SunLessons["language"]?.ToString() ?? LessonShelf.FirstLanguage;

    /// <summary>Reviews a lesson; an empty list means that it keeps every rule.</summary>
    public static IReadOnlyList<ReviewRemark> Review(Notebook lesson)
    {
        var remarks = new List<ReviewRemark>();
        Facts(lesson, remarks);
        Roles(lesson, remarks);
        Headings(lesson, remarks);
        Numbers(lesson, remarks);
        Values(lesson, remarks);
        Wording(lesson, remarks);
        remarks.AddRange(LessonLooks.Review(lesson));
        remarks.AddRange(IdeaMarks.Review(lesson));
        if (IsFinished(lesson))
        {
            remarks.AddRange(NeededParts.Missing(lesson));
        }

        return [.. remarks.Select(remark => remark.In(lesson))];
    }

    /// <summary>The prose that a learner reads, one text a paragraph, heading, list item or table cell; titles of sources stay in their own language and are left out.</summary>
    public static IEnumerable<string> ProseOf(Notebook lesson) => lesson.Cells.Where(cell => cell.Role != "sources").SelectMany(Prose.Of);

    /// <summary>Whether the lesson says that it is whole: "finished": true in the notebook's metadata.</summary>
    public static bool IsFinished(Notebook lesson) => lesson.SunLessons["finished"] is JsonValue value && value.TryGetValue(out bool finished) && finished;

    /// <summary>What a lesson that does not call itself finished lacks of a whole one; empty for a finished one, whose gaps are faults.</summary>
    public static IReadOnlyList<ReviewRemark> StillToWrite(Notebook lesson) =>
        IsFinished(lesson) ? [] : [.. NeededParts.Missing(lesson).Select(remark => remark.In(lesson))];

    /// <summary>The named values that the text quotes: the cell, the name, and the text that stands in the file.</summary>
    public static IEnumerable<(string CellId, string Name, string Text)> QuotedValues(Notebook lesson) =>
        lesson.Cells.Where(cell => cell.Language == "markdown").SelectMany(cell => Prose.QuotedValues(cell.Source).Select(quote => (cell.Id, quote.Name, quote.Text)));

    private static void Facts(Notebook lesson, List<ReviewRemark> remarks)
    {
        JsonObject metadata = lesson.Metadata;
        if (metadata["kernelspec"] is not JsonObject kernel || kernel["name"]?.ToString() != "sunlessons" || kernel["language"]?.ToString() != "csharp")
        {
            remarks.Add(new("", "kernel", "The notebook does not name its kernel; its metadata needs \"kernelspec\" with name sunlessons and language csharp."));
        }

        foreach (string field in (string[])["id", "title", "number", "minutes", "summary"])
        {
            if (lesson.SunLessons[field] is null)
            {
                remarks.Add(new("", "facts", $"The metadata \"sunlessons\" has no \"{field}\", and the list of lessons shows it; add it."));
            }
        }

        foreach (NotebookCell cell in lesson.Cells.Where(cell => cell.Outputs.Count > 0 || cell.ExecutionCount is not null))
        {
            remarks.Add(new(cell.Id, "stored-output", "The cell carries stored outputs, and a lesson file is kept without them; strip them."));
        }
    }

    private static void Roles(Notebook lesson, List<ReviewRemark> remarks)
    {
        foreach (NotebookCell cell in lesson.Cells)
        {
            if (cell.SunLessonsText("language") is not string language || !Languages.Contains(language))
            {
                remarks.Add(new(cell.Id, "language", "The cell does not say its language; its metadata \"sunlessons\" needs \"language\": csharp, markdown, html or svg."));
            }
            else if ((language == "markdown") != (cell.Type == CellType.Markdown))
            {
                remarks.Add(new(cell.Id, "language", $"The cell says {language} but is a {cell.Type.ToString().ToLowerInvariant()} cell; markdown stands in markdown cells, everything else in code cells."));
            }
            else if (language != "markdown" && (language is "html" or "svg") != cell.Source.AsSpan().TrimStart().StartsWith("<"))
            {
                remarks.Add(new(cell.Id, "language", $"The cell says {language}, and what begins with \"<\" is run as markup, what does not as C#; make the two agree."));
            }

            if (cell.Role is not string role || !LessonRoles.All.Contains(role))
            {
                remarks.Add(new(cell.Id, "role", $"The cell's role is {(cell.Role is null ? "missing" : $"\"{cell.Role}\"")}, and a role is one of {string.Join(", ", LessonRoles.All.Order(StringComparer.Ordinal))}; name one."));
            }
        }

        string?[] roles = [.. lesson.Cells.Select(cell => cell.Role)];
        if (roles.FirstOrDefault(role => role != "title") != "safety")
        {
            remarks.Add(new(lesson.Cells.Count > 0 ? lesson.Cells[0].Id : "", "safety-first", "The safety box is not first; right after the title comes a cell with the role safety."));
        }

        if (SafetyWords.TryGetValue(LanguageOf(lesson), out string? words) && !lesson.Cells.Any(cell => cell.Role == "safety" && cell.Source.Contains(words, StringComparison.OrdinalIgnoreCase)))
        {
            remarks.Add(new("", "safety-words", $"The safety box does not say \"{words}\"; write it there in these words."));
        }

        int last = -1;
        foreach (string needed in LessonRoles.Needed)
        {
            int at = Array.IndexOf(roles, needed);
            if (at >= 0 && at < last)
            {
                remarks.Add(new(lesson.Cells[at].Id, "anatomy", $"The role {needed} comes too early; the order is {string.Join(", ", LessonRoles.Needed)}."));
            }

            last = Math.Max(last, at);
        }
    }

    private static void Headings(Notebook lesson, List<ReviewRemark> remarks)
    {
        int level = 0;
        int first = 0;
        foreach (NotebookCell cell in lesson.Cells.Where(cell => cell.Language == "markdown"))
        {
            foreach (HeadingBlock heading in LessonMarkup.Parse(cell.Source).Descendants<HeadingBlock>())
            {
                first += heading.Level == 1 ? 1 : 0;
                if (heading.Level > level + 1)
                {
                    remarks.Add(new(cell.Id, "headings", $"A heading of level {heading.Level} follows one of level {level}, and no level may be skipped; use level {level + 1}."));
                }

                level = heading.Level;
            }
        }

        if (first != 1)
        {
            remarks.Add(new("", "headings", $"The lesson has {first} first-level headings, and a page has exactly one; keep the title's."));
        }
    }

    private static void Numbers(Notebook lesson, List<ReviewRemark> remarks)
    {
        string[] given = lesson.SunLessons["given"] is JsonArray list
            ? [.. list.Select(item => item!.ToString()).OrderByDescending(item => item.Length)]
            : [];
        foreach (NotebookCell cell in lesson.Cells.Where(cell => cell.Role != "sources"))
        {
            foreach (string text in Prose.Of(cell))
            {
                string rest = given.Aggregate(text, (current, item) => current.Replace(item, Prose.Gap, StringComparison.Ordinal));
                foreach (Match number in ComputedNumber().Matches(rest))
                {
                    remarks.Add(new(cell.Id, "bare-number", $"\"{number.Value.Trim()}\" stands bare in \"{Around(rest, number)}\", and a computed number comes from a cell; write [{number.Value.Trim()}](#value:its-name), or add it to \"given\" in the notebook's metadata if it is given and not computed."));
                }
            }
        }
    }

    private static void Values(Notebook lesson, List<ReviewRemark> remarks)
    {
        string code = string.Concat(lesson.Cells.Where(cell => cell.Language == "csharp").Select(cell => cell.Source + "\n"));
        foreach (NotebookCell cell in lesson.Cells.Where(cell => cell.Language == "markdown"))
        {
            foreach ((string name, string text) in Prose.QuotedValues(cell.Source))
            {
                if (!code.Contains($"\"{name}\"", StringComparison.Ordinal))
                {
                    remarks.Add(new(cell.Id, "unknown-value", $"The text quotes the value \"{name}\" ({text}), and no C# cell names it; give it in a cell or mend the name."));
                }
            }
        }
    }

    private static void Wording(Notebook lesson, List<ReviewRemark> remarks)
    {
        var sentences = new List<string>();
        foreach (NotebookCell cell in lesson.Cells)
        {
            if (cell.Language == "markdown")
            {
                remarks.AddRange(LessonMarkup.FormulaProblems(cell.Source).Select(problem => new ReviewRemark(cell.Id, "formula", problem)));
            }

            foreach (string sentence in Prose.Of(cell).SelectMany(Prose.Sentences))
            {
                if (Hemisphere().IsMatch(sentence) && !Condition().IsMatch(sentence))
                {
                    remarks.Add(new(cell.Id, "hemisphere", $"\"{sentence.Trim()}\" holds on one side of the world only; say where or when it holds."));
                }

                if (cell.Role is not ("sources" or "teacher"))
                {
                    sentences.Add(sentence);
                }
            }
        }

        Level(LanguageOf(lesson), sentences, remarks);
    }

    // Each language has a formula of its own; one that has none here is not judged.
    private static void Level(string language, IReadOnlyList<string> sentences, List<ReviewRemark> remarks)
    {
        if (language == "es" && ReadingLevel.SzigrisztPazosScore(sentences) is var score && score < ReadingLevel.LowestScore)
        {
            remarks.Add(new("", "reading-level", FormattableString.Invariant($"The prose reads at {score:0.0} (Szigriszt-Pazos), and lessons stay at {ReadingLevel.LowestScore:0.0} or above; shorten sentences and words.")));
        }

        if (language != LessonShelf.FirstLanguage)
        {
            return;
        }

        double grade = ReadingLevel.FleschKincaidGrade(sentences);
        if (grade > ReadingLevel.HighestGrade)
        {
            remarks.Add(new("", "reading-level", FormattableString.Invariant($"The prose reads at grade {grade:0.0} (Flesch-Kincaid), and lessons stay at {ReadingLevel.HighestGrade:0.0} or below; shorten sentences and words.")));
        }
    }

    private static string Around(string text, Match match)
    {
        int start = Math.Max(0, match.Index - 20);
        int end = Math.Min(text.Length, match.Index + match.Length + 20);
        return text[start..end].Trim();
    }
}
