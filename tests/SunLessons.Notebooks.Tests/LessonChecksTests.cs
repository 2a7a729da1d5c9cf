using System.Text.Json.Nodes;
using SunLessons.Cells.Checks;
using SunLessons.Cells.Hosting;
using SunLessons.Kernel.Rehearsing;
using SunLessons.Places;

namespace SunLessons.Notebooks.Tests;

/// <summary>Every check of every lesson, walked from the first blank to the solution, by its field and its buttons.</summary>
public class LessonChecksTests
{
    public static TheoryData<string> Ids() => LessonsTests.Ids();

    [Theory]
    [MemberData(nameof(Ids))]
    public async Task Every_check_with_a_number_answers_right_near_each_slip_each_pair_and_junk(string id)
    {
        await using Rehearsal run = await Rehearsals.OfAsync(id);
        run.Lesson.BecomeCurrent();
        IReadOnlyList<NumberCheck> checks = run.All<NumberCheck>();
        Assert.True(checks.Count >= 4, $"{id} has {checks.Count} checks with a number.");
        foreach (NumberCheck check in checks)
        {
            Assert.InRange(check.Slips.Count, 3, 6);
            var field = new Field(run.Host, check);
            NumberProblem problem = check.Problem();
            IReadOnlyList<SlipPath> told = check.FollowsPlace ? Alone(check, problem) : problem.Singles;
            Assert.Equal(CheckState.NotStarted, check.State);

            Assert.StartsWith("Nothing is written yet. Write ", field.Answer(""), StringComparison.Ordinal);
            Assert.Contains("such as", field.Answer("quite a lot"), StringComparison.Ordinal);
            Assert.Equal(CheckState.NotStarted, check.State);
            Assert.Equal(0, check.HintsTaken);

            foreach (SlipPath single in told)
            {
                Assert.Equal($"Not yet: {single.Slips[0].Kind.Name}. {single.Slips[0].Reply}", field.Answer(AnswerParser.Typed(single.Value, check.Unit)));
                Assert.Equal((CheckState.NotYet, single.Slips[0].Kind.Name), (check.State, check.WrongPathName));
            }

            foreach (SlipPath pair in problem.Pairs.Where(pair => IsFar(check, pair.Value, [problem.Answer], 3.5)))
            {
                Assert.StartsWith($"Not yet: two slips at once, {pair.Slips[0].Kind.Name} and {pair.Slips[1].Kind.Name}.", field.Answer(AnswerParser.Typed(pair.Value, check.Unit)), StringComparison.Ordinal);
            }

            Assert.Equal(0, check.HintsTaken);
            double near = new[] { 2.0, -2.0, 1.4, -1.4 }.Select(times => problem.Answer + (times * check.Tolerance))
                .First(value => IsFar(check, value, problem.Singles.Select(single => single.Value), 1.01));
            Assert.StartsWith("Nearly: ", field.Answer(AnswerParser.Typed(near, check.Unit)), StringComparison.Ordinal);

            Assert.StartsWith("Right: ", field.Answer(AnswerParser.Typed(problem.Answer, check.Unit)), StringComparison.Ordinal);
            Assert.StartsWith("Right: ", field.Answer(AnswerParser.Typed(problem.Answer + (0.9 * check.Tolerance), check.Unit).Replace('.', ',')), StringComparison.Ordinal);
            Assert.StartsWith("Right: ", field.Answer(AnswerParser.Typed(problem.Answer - (0.9 * check.Tolerance), check.Unit).Replace('-', '−')), StringComparison.Ordinal);
            Assert.Contains("Worked solution", field.Help, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public async Task Hints_come_in_steps_and_the_solution_after_them(string id)
    {
        await using Rehearsal run = await Rehearsals.OfAsync(id);
        run.Lesson.BecomeCurrent();
        foreach (Check check in run.All<Check>())
        {
            var field = new Field(run.Host, check);
            for (int step = 0; step < 3; step++)
            {
                Assert.Equal(check.Hints.Take(step), check.Hints.Where(hint => field.Help.Contains(System.Net.WebUtility.HtmlEncode(hint), StringComparison.Ordinal)));
                field.Press("hint");
            }

            Assert.DoesNotContain("Worked solution", field.Help, StringComparison.Ordinal);
            field.Press("hint");
            Assert.Contains($"<strong>Worked solution:</strong> {System.Net.WebUtility.HtmlEncode(check.Solution)}", field.Help, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public async Task Every_check_with_answers_to_choose_has_a_reply_to_each(string id)
    {
        await using Rehearsal run = await Rehearsals.OfAsync(id);
        IReadOnlyList<ChoiceCheck> checks = run.All<ChoiceCheck>();
        Assert.True(checks.Count >= 4, $"{id} has {checks.Count} checks to choose in: three from before and one on the idea.");
        foreach (ChoiceCheck check in checks)
        {
            InMemoryChannel choices = run.Host.Part(check.Key, "RadioButtonsModel");
            var field = new Field(run.Host, check);
            field.Press("check-answer");
            Assert.Equal((CheckState.NotStarted, "Choose one of the answers first."), (check.State, check.Reply));
            foreach ((AnswerOption option, int index) in check.Options.Select((option, index) => (option, index)).OrderBy(pair => pair.option.State))
            {
                choices.ChangeFromPage(new JsonObject { ["index"] = index });
                field.Press("check-answer");
                Assert.Equal(option.State, check.State);
                Assert.EndsWith(option.Reply, check.Reply, StringComparison.Ordinal);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public async Task No_wrong_slip_is_named_in_any_of_the_eight_towns(string id)
    {
        await using Rehearsal run = await Rehearsals.OfAsync(id);
        run.Lesson.BecomeCurrent();
        foreach (NumberCheck check in run.All<NumberCheck>().Where(check => check.FollowsPlace))
        {
            var field = new Field(run.Host, check);
            foreach (Place town in Gazetteer.Towns)
            {
                run.Lesson.MoveTo(town);
                NumberProblem problem = check.Problem();
                foreach (SlipPath single in problem.Singles)
                {
                    string reply = field.Answer(AnswerParser.Typed(single.Value, check.Unit));
                    if (!IsFar(check, single.Value, [problem.Answer], 1.0))
                    {
                        Assert.StartsWith("Right: ", reply, StringComparison.Ordinal);
                        continue;
                    }

                    // This slip is named, and beside it every other one that leads to the same number: none of them alone.
                    string[] same = [.. problem.Singles.Where(other => !IsFar(check, single.Value, [other.Value], 1.0)).Select(other => other.Slips[0].Kind.Name)];
                    Assert.True(check.WrongPathName == string.Join(", or ", same), $"{check.Key} at {town.Name}: {single.Slips[0].Kind.Name} was answered with '{reply}'.");
                }

                Assert.StartsWith("Right: ", field.Answer(AnswerParser.Typed(problem.Answer, check.Unit)), StringComparison.Ordinal);
            }
        }
    }

    private static bool IsFar(NumberCheck check, double value, IEnumerable<double> others, double tolerances) =>
        others.All(other => Between(value, other, check.Unit) > check.Tolerance * tolerances);

    private static double Between(double one, double other, string unit)
    {
        double turn = unit switch { "clock" => 24, "bearing" => 360, _ => 0 };
        double apart = Math.Abs(one - other);
        return turn == 0 ? apart : Math.Min(apart % turn, turn - (apart % turn));
    }

    private static IReadOnlyList<SlipPath> Alone(NumberCheck check, NumberProblem problem) => [.. problem.Singles.Where(single =>
        IsFar(check, single.Value, problem.Singles.Where(other => other != single).Select(other => other.Value).Append(problem.Answer), 1.0))];

    /// <summary>A check's field and buttons, used as a page uses them.</summary>
    private sealed class Field(InMemoryHost host, Check check)
    {
        public string Help => (string)host.Part(check.Key, "help").State["value"]!;

        public string Answer(string text)
        {
            host.Part(check.Key, "TextModel").ChangeFromPage(JsonValue.Create(text));
            Press("check-answer");
            return check.Reply;
        }

        public void Press(string role) => host.Part(check.Key, role).Click();
    }
}
