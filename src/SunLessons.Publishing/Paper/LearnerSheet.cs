using SunLessons.Cells.Checks;
using SunLessons.Cells.Live;
using SunLessons.Cells.Predictions;
using SunLessons.Cells.Trials;
using SunLessons.Cells.Worked;
using SunLessons.Figures;
using SunLessons.Notebooks;
using SunLessons.Publishing.Lessons;
using SunLessons.Publishing.Pages;
using static SunLessons.Publishing.Paper.PaperParts;

namespace SunLessons.Publishing.Paper;

/// <summary>
/// A lesson to work through without a computer: boxes to tick, room to write, stored trials in the place of controls. Answers are not on it. A line after each
/// prediction asks to cover what follows; a new page would do the same and leave half of the old one empty.
/// </summary>
internal sealed class LearnerSheet(LessonPage page, PaperParts parts)
{
    // The learner's own dial needs cells that run; what is for the teacher has a sheet of its own, and the sources stand there, once for a class.
    private static readonly string[] NotOnPaper = ["teacher", "sources", "own-dial"];

    /// <summary>The sheet.</summary>
    public string Body()
    {
        var roles = page.Notebook.Cells.Where(cell => cell.Type != CellType.Raw && !NotOnPaper.Contains(cell.Role)).ToArray();
        var sections = new List<string>();
        for (var from = 0; from < roles.Length;)
        {
            var to = from + 1;
            while (to < roles.Length && roles[to].Role == roles[from].Role)
            {
                to++;
            }

            sections.Add(Section(roles[from].Role ?? "", roles[from..to]));
            from = to;
        }

        return $"<p class=\"heading-line\">{parts.Say("page.minutes", page.Lesson.Number, page.Lesson.Minutes)}</p><p class=\"name-line\"><span>{parts.Say("paper.name")}</span><span>{parts.Say("paper.date")}</span></p>\n"
            + string.Concat(sections) + parts.Notes("paper.notes") + parts.SmallPrint();
    }

    private string Section(string role, NotebookCell[] cells)
    {
        var inside = string.Concat(cells.Select(cell => cell.Type == CellType.Markdown ? parts.Text(cell) : string.Concat(parts.Things(cell).Select(Thing))));
        var after = role switch
        {
            "prediction" => $"<p class=\"turn\">{parts.Say("paper.turn")}</p>",
            // Lessons end these parts by asking for a sentence or for notes.
            "experiment" when !cells.SelectMany(parts.Things).OfType<Explanation>().Any() => Lines(3),
            "exit" => Lines(2),
            "activity" => Lines(6),
            _ => "",
        };
        return $"<section class=\"{role}\">{inside}{after}</section>\n";
    }

    private string Thing(object thing) => thing switch
    {
        Prediction guess => Guess(guess),
        PredictionBeside beside => $"<div class=\"beside\"><p class=\"question\">{E(beside.Question)}</p><p class=\"answer-line\"><span>{parts.Say("paper.guess")}</span></p><p data-outcome=\"{E(beside.Key)}\">{parts.Say("paper.outcome")} <b>{E(string.Join("; ", beside.Outcomes))}</b></p></div>",
        Explanation own => $"<div class=\"task\"><p class=\"question\">{E(own.Question)}</p>{Lines(3)}</div>",
        NumberCheck check => $"<div class=\"task\">{parts.Question(check)}{Lines(2)}<p class=\"answer-line\"><span>{parts.Say("paper.answer", check.Asked)}</span></p></div>",
        ChoiceCheck check => $"<div class=\"task\">{parts.Question(check)}{Boxes(check.Options.Select(option => option.Text))}</div>",
        WorkedExample example => Example(example),
        TrialTable table => parts.Trials(table),
        LiveFigure figure => parts.Drawing(figure),
        Figure figure => parts.Drawing(figure),
        StepsTable steps => $"<div data-steps=\"{E(steps.Key)}\">{Tight(steps.ToHtml())}</div>",
        LiveText text => $"<p data-text=\"{E(text.Key)}\">{E(text.PlainText)}</p>",
        DataTable table => Table(table),
        FilledMarkup markup => $"<figure class=\"markup\">{markup.Text}</figure>",
        Cells.Shown => "",
        _ => $"<p>{E(thing.ToString() ?? "")}</p>",
    };

    private string Guess(Prediction guess)
    {
        // A line at each point, to set the pencil on.
        var room = guess.Grid is { } grid ? parts.Drawing(Enumerable.Range(0, grid.X.Names.Length).Aggregate(grid.Says(""), (lined, point) => lined.MarkAcross(point)))
            : guess.Options.Count > 0 ? Boxes(guess.Options)
            : Lines(1);
        return $"<div class=\"task\"><p class=\"question\">{E(guess.Question)}</p>{room}<p>{parts.Say("paper.because")}</p>{Lines(2)}</div>";
    }

    private static string Example(WorkedExample example) =>
        $"<div class=\"task\" data-worked=\"{E(example.Key)}\"><p class=\"question\">{E(example.Title)}</p><ol class=\"steps\">{string.Concat(example.Lines.Select((line, i) => i < example.FirstBlank
            ? $"<li>{E(line.Words)}: <b>{E(line.Text)}</b>. {E(line.Why)}</li>"
            : $"<li class=\"blank\"><span>{E(line.Words)}:</span></li>"))}</ol></div>";
}
