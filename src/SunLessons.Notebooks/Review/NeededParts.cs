using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using SunLessons.Places;

namespace SunLessons.Notebooks.Review;

/// <summary>
/// What a finished lesson has beside its roles: each part with the cells that it is looked for in and the sentence that says what to
/// write. The shape rests on predict, observe and explain (White and Gunstone 1992), on examples whose steps fade (Renkl, Atkinson and
/// Grosse 2004), on recall from memory (Agarwal, Nunes and Blunt 2021) and on views that share a mark (Ainsworth 2006).
/// </summary>
internal static partial class NeededParts
{
    // The tilt of the Earth's axis to a hundredth of a degree: between these parallels the Sun can stand overhead.
    private const double TropicDegrees = 23.44;

    private static readonly string[] CaseRoles = ["experiment", "table", "refutation", "reasoning", "worked", "check"];

    // In English or in Spanish.
    [GeneratedRegex(@"\bone (?:thing |control )?at a time\b|\b(?:uno|una)(?: sola)?(?: cosa)? cada vez\b", RegexOptions.IgnoreCase)]
    private static partial Regex OneAtATime();

    // A row of two columns that ends in one number; a span such as "10 to 15" is for what may come after the lesson.
    [GeneratedRegex(@"^\|[^|]+\|\s*(\d+)\s*\|\s*$", RegexOptions.Multiline)]
    private static partial Regex MinutesOfPart();

    [GeneratedRegex(@"^\s*## ")]
    private static partial Regex SectionHead();

    [GeneratedRegex(@"^\s*(?:[-*]|\d+\.)\s", RegexOptions.Multiline)]
    private static partial Regex ListItem();

    /// <summary>One remark for each part that is not there.</summary>
    public static IEnumerable<ReviewRemark> Missing(Notebook lesson)
    {
        foreach (string role in LessonRoles.Needed.Where(role => !lesson.Cells.Any(cell => cell.Role == role)))
        {
            yield return new("", "anatomy", $"The lesson has no cell with the role {role}; add one{After(lesson, role)}.");
        }

        foreach (ReviewRemark remark in Counted(lesson).Concat(Worded(lesson)).Concat(Minutes(lesson)).Concat(Cases(lesson)).Concat(IdeaMarks.Missing(lesson)))
        {
            yield return remark;
        }
    }

    private static IEnumerable<ReviewRemark> Counted(Notebook lesson)
    {
        int recalled = Sum(lesson, "recall", cell => CellCalls.Keyed(cell, "ChoiceCheck", "NumberCheck"));
        if (recalled < 3)
        {
            yield return At(lesson, "recall", "recall", $"The lesson asks {recalled} questions from before, and a lesson opens with 3; write a ChoiceCheck(...) for each in a cell with the role recall.");
        }

        if (Sum(lesson, "prediction", cell => CellCalls.Keyed(cell, "Predict", "PredictNumber", "PredictSketch")) == 0)
        {
            yield return At(lesson, "prediction", "prediction", "Nothing is foretold, and the learner guesses before the controls wake; write var guess = Predict(...) in a cell with the role prediction, and show it.");
        }

        bool Experiments(Func<NotebookCell, bool> has) => lesson.Cells.Any(cell => cell.Role == "experiment" && has(cell));
        if (!Experiments(cell => CellCalls.Keyed(cell, CellCalls.Controls) > 0 && CellCalls.Keyed(cell, "LiveFigure") >= 2))
        {
            yield return At(lesson, "experiment", "two-views", "No step of the experiment has controls and two figures that follow them; write two LiveFigure(...) in one cell with the role experiment, with one mark that is alike in both.");
        }

        if (!Experiments(cell => CellCalls.Keyed(cell, "Trials") > 0))
        {
            yield return At(lesson, "experiment", "trials", "The experiment keeps no trials; write Trials(...) with the controls in a cell with the role experiment: it warns when two things were changed at once.");
        }

        if (!Experiments(cell => CellCalls.Has(cell, ".ShowBeside(")))
        {
            yield return At(lesson, "experiment", "beside", "The guess is not shown beside what came out; write guess.ShowBeside(...) in a cell with the role experiment, after the figures.");
        }

        foreach ((string fade, string steps) in new[] { ("NoStep", "every step shown"), ("LastSteps", "the last steps left to the learner"), ("EveryStep", "all steps left to the learner") })
        {
            if (!lesson.Cells.Any(cell => cell.Role == "worked" && CellCalls.Has(cell, "Fade." + fade)))
            {
                yield return At(lesson, "worked", "fades", $"The worked example with {steps} is missing; write Worked(..., Fade.{fade}, ...) in a cell with the role worked.");
            }
        }

        int numbers = Sum(lesson, "check", cell => CellCalls.Keyed(cell, "NumberCheck", "NumberCheckHere"));
        if (numbers < 4)
        {
            yield return At(lesson, "check", "checks", $"The lesson has {numbers} checks with a number, and a lesson has 4 or more; write NumberCheck(...) in cells with the role check.");
        }

        if (Sum(lesson, "check", cell => CellCalls.Keyed(cell, "ChoiceCheck")) == 0)
        {
            yield return At(lesson, "check", "checks", "No check is about the idea; write a ChoiceCheck(...) whose wrong answers are what people believe, in a cell with the role check.");
        }
    }

    private static IEnumerable<ReviewRemark> Worded(Notebook lesson)
    {
        IEnumerable<string> Said(string role) => lesson.Cells.Where(cell => cell.Role == role).SelectMany(Prose.Of);
        if (!Said("experiment").Any(text => OneAtATime().IsMatch(text)))
        {
            yield return At(lesson, "experiment", "one-thing", "The experiment does not tell the learner to change one thing at a time; write \"Change one at a time\" in its text.");
        }

        if (lesson.Cells.Any(cell => cell.Role == "reasoning" && cell.Source.Contains("$$", StringComparison.Ordinal)) && !Said("reasoning").Any(text => text.Contains("without a formula", StringComparison.OrdinalIgnoreCase) || text.Contains("sin fórmula", StringComparison.OrdinalIgnoreCase)))
        {
            yield return At(lesson, "reasoning", "no-formula", "The reasoning has a formula and no way round it; add a paragraph \"Without a formula: ...\" with a drawing or a table in its place.");
        }

        foreach (NotebookCell cell in lesson.Cells.Where(cell => cell.Role == "teacher" && cell.Type == CellType.Markdown && !SectionHead().IsMatch(cell.Source)))
        {
            yield return new(cell.Id, "folded", "What is for the teacher is folded away under its heading on a learner's page, and this cell begins with none; begin it with \"## For the teacher\".");
        }

        foreach ((string role, string what) in new[] { ("activity", "steps in a numbered list"), ("sources", "one item a source, in a list") })
        {
            NotebookCell[] cells = [.. lesson.Cells.Where(cell => cell.Role == role)];
            if (cells.Length > 0 && !cells.Any(cell => ListItem().IsMatch(cell.Source)))
            {
                yield return new(cells[0].Id, role, $"The {role} has no list; write {what}.");
            }
        }
    }

    private static IEnumerable<ReviewRemark> Minutes(Notebook lesson)
    {
        NotebookCell[] cells = [.. lesson.Cells.Where(cell => cell.Role == "teacher")];
        int[] parts = [.. cells.SelectMany(cell => MinutesOfPart().Matches(cell.Source)).Select(row => int.Parse(row.Groups[1].ValueSpan, CultureInfo.InvariantCulture))];
        if (cells.Length > 0 && lesson.SunLessons["minutes"] is JsonValue whole && whole.TryGetValue(out int minutes) && parts.Sum() != minutes)
        {
            yield return At(lesson, "teacher", "minutes", parts.Length == 0
                ? $"The teacher has no table of minutes; write a table of two columns, a part and its minutes, that adds up to the {minutes} of the lesson."
                : $"The minutes of the parts add up to {parts.Sum()}, and the lesson says {minutes}; change a part, or \"minutes\" in the notebook's metadata.");
        }
    }

    private static IEnumerable<ReviewRemark> Cases(Notebook lesson)
    {
        string words = string.Concat(lesson.Cells.Where(cell => CaseRoles.Contains(cell.Role)).Select(cell => cell.Source + "\n"));
        string[] Named(Func<double, bool> lies) => [.. Gazetteer.Towns.Where(town => lies(town.Point.Latitude.Degrees)).Select(town => town.Name)];
        foreach ((string side, string[] towns) in new[]
        {
            ("north of the tropics", Named(latitude => latitude > TropicDegrees)),
            ("in the tropics", Named(latitude => Math.Abs(latitude) <= TropicDegrees)),
            ("south of the tropics", Named(latitude => latitude < -TropicDegrees)),
        })
        {
            if (!towns.Any(town => words.Contains(town, StringComparison.Ordinal)))
            {
                yield return new("", "cases", $"No case lies {side}; name {string.Join(" or ", towns)} in the experiment, a table, the reasoning, a worked example or a check.");
            }
        }
    }

    private static int Sum(Notebook lesson, string role, Func<NotebookCell, int> count) => lesson.Cells.Where(cell => cell.Role == role).Sum(count);

    /// <summary>A remark in the last cell of a role, where more of its kind would be written; in the whole lesson while it has none.</summary>
    private static ReviewRemark At(Notebook lesson, string role, string rule, string sentence) =>
        new(lesson.Cells.LastOrDefault(cell => cell.Role == role)?.Id ?? "", rule, sentence);

    private static string After(Notebook lesson, string role)
    {
        string[] before = [.. LessonRoles.Needed.TakeWhile(needed => needed != role)];
        return lesson.Cells.LastOrDefault(cell => before.Contains(cell.Role)) is NotebookCell last ? $" after cell {lesson.Cells.ToList().IndexOf(last) + 1} ({last.Role}, \"{last.Id}\")" : " at the top";
    }
}
