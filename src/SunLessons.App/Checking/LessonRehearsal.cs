using NodaTime;
using SunLessons.Cells.Checks;
using SunLessons.Cells.Hosting;
using SunLessons.Cells.Live;
using SunLessons.Cells.Predictions;
using SunLessons.Kernel.Rehearsing;
using SunLessons.Notebooks;
using SunLessons.Notebooks.Review;
using SunLessons.Places;

namespace SunLessons.App.Checking;

/// <summary>
/// What only a run can tell about a lesson: each cell runs to its end, what the text quotes is what the cells give, each check takes its right
/// answer for right and names each of its slips, and each figure can be drawn once the guesses are recorded, in the north, in the south and in the tropics.
/// </summary>
internal static class LessonRehearsal
{
    // One of the eight towns, as any other: lessons quote numbers for places that they name themselves.
    private static readonly PagePlace Place = PagePlace.FromDegrees("Vigo", 42.24, -8.72, "Europe/Madrid");

    /// <summary>Runs the lesson's cells from the top in this process.</summary>
    /// <returns>What to mend, in the order of the cells, and how much was tried.</returns>
    public static async Task<(IReadOnlyList<ReviewRemark> Remarks, int Cells, int Checks)> RunAsync(Notebook lesson, IClock clock)
    {
        var cells = lesson.Cells.Where(cell => cell.Type == CellType.Code).Select(cell => (cell.Id, cell.Language, cell.Source));
        await using var run = await Rehearsal.RunAsync(cells, Place, clock);
        run.Lesson.BecomeCurrent();
        var remarks = new List<ReviewRemark>();
        var checks = 0;
        foreach (var cell in run.Cells)
        {
            if (cell.Problem is { } problem)
            {
                remarks.Add(new(cell.Id, "runs", $"The cell does not run to its end: {problem.TrimEnd('.')}; mend it, or what it needs from a cell above."));
            }

            foreach (var check in cell.Shown.OfType<Check>())
            {
                checks++;
                remarks.AddRange(Try(check, run.Host).Select(sentence => new ReviewRemark(cell.Id, "check", $"The check \"{check.Key}\" {sentence}")));
            }
        }

        remarks.AddRange(Quotes(lesson, run));
        remarks.AddRange(await AwakeAsync(run));
        return ([.. remarks.Select(remark => remark.In(lesson)).OrderBy(remark => remark.CellNumber)], run.Cells.Count, checks);
    }

    private static IEnumerable<ReviewRemark> Quotes(Notebook lesson, Rehearsal run)
    {
        var values = new Dictionary<string, string>();
        foreach (var value in run.Cells.SelectMany(cell => cell.Outputs).Select(output => output.GetValueOrDefault(Cells.Lesson.ValueMimeType)))
        {
            if (value?["name"]?.ToString() is { } name)
            {
                values[name] = value["text"]!.ToString();
            }
        }

        foreach (var (cellId, name, text) in LessonReview.QuotedValues(lesson))
        {
            if (!values.TryGetValue(name, out var given))
            {
                yield return new(cellId, "quoted", $"The text quotes \"{name}\" as {text}, and no cell gave it; write Value(\"{name}\", ...) in a cell.");
            }
            else if (given != text)
            {
                yield return new(cellId, "quoted", $"The text quotes \"{name}\" as {text}, and the cells give {given}; write [{given}](#value:{name}).");
            }
        }
    }

    /// <summary>Records a guess everywhere, so that figures wake, and looks at them at three places.</summary>
    private static async Task<IReadOnlyList<ReviewRemark>> AwakeAsync(Rehearsal run)
    {
        foreach (var guess in run.All<Prediction>())
        {
            guess.RecordExample();
        }

        var remarks = new List<ReviewRemark>();
        foreach (var town in new[] { "Vigo", "Dunedin", "Nairobi" })
        {
            run.Lesson.MoveTo(Gazetteer.Towns.Single(place => place.Name == town));
            await run.Lesson.Settled;
            foreach (var cell in run.Cells)
            {
                foreach (var figure in cell.Shown.OfType<LiveFigure>().Where(figure => figure.Figure is null && !remarks.Any(told => told.CellId == cell.Id)))
                {
                    remarks.Add(new(cell.Id, "figure", $"The figure \"{figure.Key}\" cannot be drawn at {town} once the guess is recorded: {figure.PlainText.TrimEnd('.')}; mend what it computes."));
                }
            }
        }

        return remarks;
    }

    private static IEnumerable<string> Try(Check check, InMemoryHost host)
    {
        switch (check)
        {
            case NumberCheck number:
                return Try(number, host);
            case ChoiceCheck choice:
                return Try(choice, host);
            default:
                return [];
        }
    }

    private static IEnumerable<string> Try(ChoiceCheck check, InMemoryHost host)
    {
        foreach (var (option, index) in check.Options.Select((option, index) => (option, index)))
        {
            host.Part(check.Key, "RadioButtonsModel").ChangeFromPage(new System.Text.Json.Nodes.JsonObject { ["index"] = index });
            host.Part(check.Key, "check-answer").Click();
            if (check.State != option.State)
            {
                yield return $"answers \"{option.Text}\" with \"{check.Reply}\"; it should be {option.State}.";
            }
        }
    }

    private static IEnumerable<string> Try(NumberCheck check, InMemoryHost host)
    {
        if (check.Slips.Count is < 3 or > 6)
        {
            yield return $"declares {check.Slips.Count} slips, and a check knows 3 to 6; write Slip(...) for the usual wrong ways.";
        }

        var problem = check.Problem();
        Answer(problem.Answer);
        if (check.State != CheckState.Right)
        {
            yield return $"does not take its own answer {check.Say(problem.Answer)} for right (\"{check.Reply}\"); mend its formula.";
        }

        // At a place of the learner two slips may lead to one number: then both are named. Elsewhere the check itself refuses such numbers.
        foreach (var slip in problem.Astray)
        {
            Answer(slip.Value);
            if (check.State != CheckState.NotYet || check.WrongPathName?.Contains(slip.Name, StringComparison.Ordinal) != true)
            {
                yield return $"does not tell {slip.Name}, which leads to {check.Say(slip.Value)}, from other ways (\"{check.Reply}\"); choose other numbers for the question.";
            }
        }

        void Answer(double value)
        {
            host.Part(check.Key, "TextModel").ChangeFromPage(System.Text.Json.Nodes.JsonValue.Create(AnswerParser.Typed(value, check.Unit)));
            host.Part(check.Key, "check-answer").Click();
        }
    }
}
