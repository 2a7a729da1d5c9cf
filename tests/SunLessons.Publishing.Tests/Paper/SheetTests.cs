using SunLessons.Publishing.Tests.Support;

namespace SunLessons.Publishing.Tests.Paper;

/// <summary>What every sheet must hold, and what a learner's must not.</summary>
public sealed class SheetTests(PublishedLessons published)
{
    private static readonly string[] Sizes = ["a4", "letter"];

    public static TheoryData<string> Learners => [.. PublishedLessons.Editions.SelectMany(lesson => Sizes.Select(size => $"{lesson.Folder}.sheet-{size}.html"))];

    public static TheoryData<string> All => [.. PublishedLessons.Editions.SelectMany(lesson => Sizes.SelectMany(size => new[] { $"{lesson.Folder}.sheet-{size}.html", $"{lesson.Folder}.teacher-{size}.html" }))];

    [Theory]
    [MemberData(nameof(All))]
    public void Every_sheet_warns_of_the_Sun_in_its_text_and_at_the_foot_of_every_page(string file)
    {
        var sheet = Html.Read(published, file);
        var warning = sheet.DocumentElement.GetAttribute("lang") == "es" ? "No mires nunca al Sol" : "Never look at the Sun";
        Assert.Contains(warning, sheet.QuerySelector(".safety")?.TextContent);
        Assert.Contains(warning, sheet.QuerySelectorAll("style").Last().TextContent);
    }

    [Theory]
    [MemberData(nameof(Learners))]
    public void Every_control_of_every_experiment_has_stored_trials_with_what_was_held(string file)
    {
        var sheet = Html.Read(published, file);
        var (alone, held) = sheet.DocumentElement.GetAttribute("lang") == "es" ? ("movido solo", "Sin mover: ") : ("moved alone", "Held: ");
        var experiments = sheet.QuerySelectorAll("section.experiment").Where(section => section.QuerySelector("[data-figure]") is not null).ToArray();
        Assert.Equal(2, experiments.Length);
        foreach (var experiment in experiments)
        {
            var tables = experiment.QuerySelectorAll("table.trials").ToArray();
            Assert.NotEmpty(tables);
            foreach (var table in tables)
            {
                var caption = table.QuerySelector("caption")!.TextContent;
                Assert.Contains(alone, caption);
                // With one control alone there is nothing to hold.
                Assert.True(tables.Length == 1 || caption.Contains(held, StringComparison.Ordinal), caption);
                var positions = table.QuerySelectorAll("tbody th").Select(head => head.TextContent).ToArray();
                Assert.Equal(positions.Distinct(), positions);
                Assert.InRange(positions.Length, positions is ["off", "on"] or ["apagado", "encendido"] ? 2 : 5, 9);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Learners))]
    public void There_is_room_to_write_or_boxes_to_tick_after_every_question(string file)
    {
        var questions = Html.Read(published, file).QuerySelectorAll(".question").ToArray();
        Assert.NotEmpty(questions);
        Assert.All(questions, question => Assert.True(question.ParentElement!.QuerySelector(".lines, .boxes, .answer-line, .steps") is not null, question.TextContent));
    }

    [Theory]
    [MemberData(nameof(Learners))]
    public void Answers_stand_on_the_teachers_sheet_and_not_on_the_learners(string file)
    {
        var learner = Html.Read(published, file);
        Assert.Empty(learner.QuerySelectorAll("[data-answer], [data-solution], .slips, .options, section.teacher"));
        var teacher = Html.Read(published, file.Replace(".sheet-", ".teacher-", StringComparison.Ordinal));
        var solutions = teacher.QuerySelectorAll("[data-solution]").Select(solution => solution.TextContent[(solution.TextContent.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim()).ToArray();
        // Three to recall and at least five to check.
        Assert.True(solutions.Length >= 8, $"{solutions.Length} solutions");
        Assert.All(solutions, solution => Assert.DoesNotContain(solution, learner.Body!.TextContent, StringComparison.Ordinal));
        var answered = teacher.QuerySelectorAll(".key .question").Select(question => question.TextContent).ToHashSet();
        var asked = learner.QuerySelectorAll("section.recall .question, section.check .question").Select(question => question.TextContent).ToArray();
        Assert.All(asked, question => Assert.Contains(question, answered));
        // What came out for each guess.
        var guesses = learner.QuerySelectorAll("[data-outcome]").Select(outcome => outcome.TextContent).ToArray();
        Assert.NotEmpty(guesses);
        Assert.Equal(guesses, teacher.QuerySelectorAll("[data-outcome]").Select(outcome => outcome.TextContent));
        // All that is blank on the learner's.
        foreach (var example in learner.QuerySelectorAll("[data-worked]").Where(example => example.QuerySelector(".blank") is not null))
        {
            var key = teacher.QuerySelector($".key[data-worked='{example.GetAttribute("data-worked")}']");
            Assert.NotNull(key);
            Assert.Equal(example.QuerySelectorAll("li").Length, key.QuerySelectorAll("li b").Length);
        }
    }

    [Theory]
    [MemberData(nameof(Learners))]
    public void The_teachers_sheet_has_minutes_that_add_up_a_set_up_a_plan_for_clouds_and_a_rubric(string file)
    {
        var teacher = Html.Read(published, file.Replace(".sheet-", ".teacher-", StringComparison.Ordinal));
        var own = teacher.QuerySelector("section.teacher")!;
        var parts = own.QuerySelectorAll("h3").ToArray();
        Assert.Equal(
            teacher.DocumentElement.GetAttribute("lang") == "es" ? ["Minutos", "Preparación", "Si está nublado", "Rúbrica de la actividad"] : ["Minutes", "Set-up", "If it is cloudy", "Rubric for the activity"],
            parts.Select(part => part.TextContent));

        // The activity has a span of minutes, for it may come after the lesson; the others have one number each.
        var minutes = parts[0].NextElementSibling!.QuerySelectorAll("tbody tr > :last-child").Select(cell => cell.TextContent).ToArray();
        var lesson = PublishedLessons.Editions.Single(lesson => file.StartsWith(lesson.Folder + ".sheet-", StringComparison.Ordinal));
        Assert.Equal(lesson.Minutes, minutes[..^1].Sum(text => int.Parse(text, System.Globalization.CultureInfo.InvariantCulture)));
        Assert.InRange(parts[1].NextElementSibling!.QuerySelectorAll("li").Length, 3, 9);
        Assert.True(parts[2].NextElementSibling is { LocalName: "p", TextContent.Length: > 100 });
        var rubric = parts[3].NextElementSibling!.QuerySelectorAll("tr").ToArray();
        Assert.InRange(rubric.Length, 4, 9);
        Assert.All(rubric, row => Assert.Equal(4, row.Children.Count(cell => cell.TextContent.Trim().Length > 0)));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Headings_go_down_one_level_at_a_time_from_one_title(string file)
    {
        var levels = Html.Read(published, file).QuerySelectorAll("h1, h2, h3, h4").Select(heading => heading.LocalName[1] - '0').ToArray();
        Assert.Equal(1, levels[0]);
        Assert.Single(levels, level => level == 1);
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 1, $"h{pair.First} is followed by h{pair.Second}."));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Drawings_are_black_and_have_a_text_in_their_place(string file)
    {
        var sheet = Html.Read(published, file);
        foreach (var drawing in sheet.QuerySelectorAll("figure svg"))
        {
            var named = drawing.HasAttribute("aria-label") || drawing.HasAttribute("aria-labelledby") || drawing.QuerySelector("title") is not null;
            Assert.True(named, "A drawing without a name.");
        }

        // A drawing of the program has no colour at all.
        var colours = sheet.QuerySelectorAll("figure:not(.markup) svg *")
            .SelectMany(part => new[] { part.GetAttribute("stroke"), part.GetAttribute("fill") })
            .Where(colour => colour?.StartsWith('#') == true).Distinct().ToArray();
        Assert.All(colours, colour => Assert.True(IsGrey(colour!), colour));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void No_link_of_a_sheet_leads_to_a_file_that_is_not_there(string file)
    {
        var sheet = Html.Read(published, file);
        var links = sheet.QuerySelectorAll("a[href]").Select(link => link.GetAttribute("href")!).Where(link => !link.Contains(':', StringComparison.Ordinal)).ToArray();
        Assert.NotEmpty(links);
        Assert.All(links, link => Assert.True(link.StartsWith('#') ? sheet.GetElementById(link[1..]) is not null : File.Exists(Path.Combine(published.Folder, link)), link));
    }

    [Theory]
    [MemberData(nameof(PublishedLessons.Folders), MemberType = typeof(PublishedLessons))]
    public void A_lesson_in_one_file_has_no_links_to_sheets_which_may_not_lie_beside_it(string folder)
    {
        const string toSheet = ".sheet-a4.html\"";
        Assert.Contains(toSheet, File.ReadAllText(Path.Combine(published.Folder, folder + ".html")), StringComparison.Ordinal);
        Assert.DoesNotContain(toSheet, File.ReadAllText(Path.Combine(published.Single, folder + ".html")), StringComparison.Ordinal);
    }

    private static bool IsGrey(string colour) => colour.Length == 4 ? colour[1] == colour[2] && colour[2] == colour[3] : colour[1..3] == colour[3..5] && colour[3..5] == colour[5..7];
}
