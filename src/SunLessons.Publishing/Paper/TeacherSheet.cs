using SunLessons.Cells.Checks;
using SunLessons.Cells.Predictions;
using SunLessons.Cells.Worked;
using SunLessons.Notebooks;
using SunLessons.Publishing.Pages;
using static SunLessons.Publishing.Paper.PaperParts;

namespace SunLessons.Publishing.Paper;

/// <summary>
/// For the teacher: set-up, minutes, cloudy-day plan and rubric from the lesson's own cells, then every answer with the wrong paths that lead near it, and the
/// lesson's sources.
/// </summary>
internal sealed class TeacherSheet(LessonPage page, PaperParts parts)
{
    // In this order they stand on the learner's sheet too.
    private static readonly string[] Answered = ["recall", "prediction", "experiment", "worked", "check"];

    /// <summary>The sheet.</summary>
    public string Body()
    {
        var cells = page.Notebook.Cells;
        string Own(string role) => string.Concat(cells.Where(cell => cell.Role == role && cell.Type == CellType.Markdown).Select(parts.Text));
        var answers = string.Concat(Answered.Select(role => string.Concat(cells.Where(cell => cell.Role == role).SelectMany(parts.Things).Select(Thing))));
        return $"<h1>{parts.Say("paper.teacher.title", page.Lesson.Title)}</h1>\n<p class=\"heading-line\">{parts.Say("page.minutes", page.Lesson.Number, page.Lesson.Minutes)}</p><p class=\"safety\">{parts.Say("page.footing")}</p>\n"
            + $"<section class=\"teacher\">{Own("teacher")}</section>\n<section class=\"answers\"><h2>{parts.Say("paper.answers")}</h2>{answers}</section>\n<section class=\"sources\">{Own("sources")}</section>\n" + parts.Notes("paper.notes.teacher") + parts.SmallPrint();
    }

    private string Thing(object thing) => thing switch
    {
        ChoiceCheck check => Key(check, Choice(check)),
        NumberCheck check => Key(check, Number(check)),
        PredictionBeside beside => $"<div class=\"key\"><p class=\"question\">{E(beside.Question)}</p><p data-outcome=\"{E(beside.Key)}\">{parts.Say("paper.outcome")} <b>{E(string.Join("; ", beside.Outcomes))}</b></p></div>",
        WorkedExample example when example.FirstBlank < example.Lines.Count => Example(example),
        _ => "",
    };

    private string Key(Check check, string answer) =>
        $"<div class=\"key\" data-key=\"{E(check.Key)}\">{parts.Question(check)}{answer}<p>{parts.Say("paper.hints")} {E(string.Join(" / ", check.Hints))}</p>"
        + $"<p data-solution=\"{E(check.Key)}\">{parts.Say("paper.solution")} {E(page.Awake.Ask(() => check.Solution))}</p></div>";

    private string Choice(ChoiceCheck check) => Table(
        "options",
        parts.Word("paper.options"),
        [parts.Word("paper.option"), parts.Word("paper.reply")],
        [.. check.Options.Select((option, i) => (IReadOnlyList<string>)[$"{Letter(i)} {option.Text}", $"{parts.Word(option.State switch { CheckState.Right => "paper.right", CheckState.Nearly => "paper.nearly", _ => "paper.wrong" })} {option.Reply}"])]);

    private string Number(NumberCheck check)
    {
        var problem = page.Awake.Ask(check.Problem);
        return $"<p>{parts.Say("paper.is")} <b data-answer=\"{E(check.Key)}\">{E(check.Say(problem.Answer))}</b>, {parts.Say("paper.within", check.ToleranceText)}</p>"
            + Table("slips", parts.Word("paper.slips"), [parts.Word("paper.slip.answer"), parts.Word("paper.slip.name"), parts.Word("paper.slip.reply")],
                [.. problem.Astray.Select(path => (IReadOnlyList<string>)[check.Say(path.Value), path.Name, path.Reply])]);
    }

    private static string Example(WorkedExample example) =>
        $"<div class=\"key\" data-worked=\"{E(example.Key)}\"><p class=\"question\">{E(example.Title)}</p><ol class=\"steps\">{string.Concat(example.Lines.Select(line => $"<li>{E(line.Words)}: <b>{E(line.Text)}</b>. {E(line.Why)}</li>"))}</ol></div>";
}
