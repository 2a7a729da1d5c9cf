using System.Text.Json.Nodes;
using NodaTime;
using SunLessons.Dials;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.Cells.Tests;

public class ReadingStepsTests
{
    private static readonly Place Vigo = Gazetteer.Towns.First(t => t.Name == "Vigo");

    [Fact]
    public async Task The_librarys_chain_follows_the_control_and_ends_at_the_librarys_clock()
    {
        var page = new Page(drawsFigures: true, place: Page.Vigo);
        var hour = page.Lesson.Hour("hour", "The dial shows", start: 12);
        var date = new LocalDate(2026, 6, 21);
        ClockReading Read() => ClockFromDial.Read(page.Lesson.Here, date, DialTime.FromHours(hour));
        page.Lesson.Show(hour, page.Lesson.Steps("chain", "Vigo", Read, hour));

        page.Last("FloatSliderModel").ChangeFromPage(JsonValue.Create(15.0));
        await page.Lesson.Settled;

        var chain = Assert.IsType<ClockReading.One>(ClockFromDial.Read(Vigo, date, DialTime.FromHours(15))).Chain;
        Assert.Contains($"<td>{ReadingChain.TimeText(chain.Clock)}</td></tr></tbody>", page.Html("steps"));
        Assert.Contains("<th scope=\"row\">longitude</th><td>+94.9 min</td>", page.Html("steps"));
        Assert.Contains("<td>+60.0 min</td>", page.Html("steps"));

        // The law is one version's of the zones' rules, and the step that uses it says which.
        Assert.Contains($"(time-zone rules {chain.TzdbVersion})</td>", page.Html("steps"));
        Assert.Contains("<th scope=\"col\">Standard uncertainty</th>", page.Html("steps"));
    }

    [Fact]
    public void A_reading_when_the_Sun_is_down_says_why_there_is_no_time()
    {
        var page = new Page(drawsFigures: true, place: Page.Vigo);
        ClockReading Read() => ClockFromDial.Read(Vigo, new LocalDate(2026, 12, 21), DialTime.FromHours(5));
        var none = Assert.IsType<ClockReading.None>(Read());

        var steps = page.Lesson.Steps("chain", "Vigo", Read);
        page.Lesson.Show(steps);

        Assert.Empty(steps.Rows);
        Assert.Equal(none.Sentence, steps.PlainText);
        Assert.DoesNotContain("<table", page.Html("steps"));
    }

    [Fact]
    public void A_reading_that_fits_several_times_lists_every_one_and_chooses_none()
    {
        // A dial far from home and badly turned can show one time twice a day; which one does is of no importance here.
        var reading = Several();
        var page = new Page();

        var steps = page.Lesson.Steps("chain", "Reading", () => reading);
        page.Lesson.Show(steps);

        var html = page.Html("steps");
        Assert.Equal(reading.Chains.Count, html.Split("<table").Length - 1);
        Assert.All(reading.Chains, chain => Assert.Contains(ReadingChain.TimeText(chain.Clock), html));
        Assert.Contains($"answer 1 of {reading.Chains.Count}", html);
        Assert.StartsWith(reading.Sentence, steps.PlainText);
    }

    private static ClockReading.Several Several()
    {
        foreach (var town in Gazetteer.Towns)
        {
            foreach (var scale in new[] { -60.0, -40, -20, 20, 40, 60 })
            {
                foreach (var twist in new[] { 0.0, 60, 120, 180 })
                {
                    for (var hour = 6; hour <= 18; hour++)
                    {
                        var profile = new DialProfile
                        {
                            ScaleLatitude = Latitude.FromDegrees(scale),
                            Setting = new DialSetting.Standing(DialStance.FromDegrees(twist)),
                        };
                        if (ClockFromDial.Read(town, new LocalDate(2026, 6, 21), DialTime.FromHours(hour), profile) is ClockReading.Several several)
                        {
                            return several;
                        }
                    }
                }
            }
        }

        throw new InvalidOperationException("No reading with several answers was found; the search above has to be widened.");
    }
}
