using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using SunLessons.App.Tests.Browser;
using SunLessons.Magnetism;
using SunLessons.Places;
using SunLessons.Publishing.Tests.Support;
using SunLessons.Readings;

namespace SunLessons.Publishing.Tests.Browser;

/// <summary>The page of one dial, for a phone beside it.</summary>
[Trait("needs", "browser")]
public sealed class DialTests
{
    [Fact]
    public async Task A_phone_shows_the_clock_each_step_and_the_correction_of_that_dial_from_a_disk()
    {
        var folder = Directory.CreateTempSubdirectory("sunlessons-dial-").FullName;
        try
        {
            var place = Gazetteer.Towns.First(town => town.Name == "Dunedin");
            var dial = new DialProfile
            {
                ScaleLatitude = Latitude.FromDegrees(-43.5),
                Setting = new DialSetting.NeedleOnLine(new CompassLine(MagneticDeclination.FromDegrees(24), Angle.FromDegrees(0.5))) { MeasuredDeclination = MagneticDeclination.FromDegrees(26.25) },
            };
            await PublishedLessons.NewPublisher().PublishDialAsync(place, dial, folder, singleFile: false);
            var read = Assert.IsType<ClockReading.One>(ClockFromDial.Read(place, new NodaTime.LocalDate(2026, 12, 3), DialTime.FromHoursMinutes(14, 20), dial));

            await using var browser = await BrowserPage.OpenAsync(320, 640);
            var page = new PublishedPage(browser);
            await page.OpenAsync(new Uri(Path.Combine(folder, "my-dial.html")));
            await page.Page.Locator("input[type=date]").FillAsync("2026-12-03");
            await page.Page.Locator("[data-part=dial-time] input").FillAsync("14:20");
            await Assertions.Expect(page.Cell("dial-today")).ToContainTextAsync(read.Chain.Summary);
            await Assertions.Expect(page.Cell("dial-today").Locator("p").First).ToHaveTextAsync(read.Chain.Total.InWords());
            foreach (var step in read.Chain.Steps)
            {
                await Assertions.Expect(page.Cell("steps")).ToContainTextAsync(ReadingChain.TimeText(step.RunningTime));
                await Assertions.Expect(page.Cell("steps")).ToContainTextAsync(step.Cause);
            }

            Assert.Equal(0, await page.Page.Locator("#place-open").CountAsync());
            Assert.True(await page.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth") <= 320);
            Assert.Empty((await page.Page.RunAxe()).Violations.Select(v => v.Id + " " + v.Nodes[0].Html));
            Assert.Empty(browser.Foreign);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task The_page_of_a_dial_speaks_Spanish_when_it_is_made_so()
    {
        var folder = Directory.CreateTempSubdirectory("sunlessons-dial-").FullName;
        try
        {
            var place = Gazetteer.Towns.First(town => town.Name == "Ushuaia");
            await PublishedLessons.NewPublisher().PublishDialAsync(place, DialProfile.Faultless, folder, singleFile: true, "es");
            var chain = Assert.IsType<ClockReading.One>(ClockFromDial.Read(place, new NodaTime.LocalDate(2026, 12, 3), DialTime.FromHoursMinutes(14, 20), DialProfile.Faultless)).Chain;
            await using var browser = await BrowserPage.OpenAsync(320, 640);
            var page = new PublishedPage(browser);
            await page.OpenAsync(new Uri(Path.Combine(folder, "my-dial.html")));
            Assert.Equal("es", await page.Page.EvaluateAsync<string>("() => document.documentElement.lang"));
            await Assertions.Expect(page.Page.Locator("h1")).ToHaveTextAsync("Mi cuadrante: Ushuaia");
            await page.Page.Locator("input[type=date]").FillAsync("2026-12-03");
            await page.Page.Locator("[data-part=dial-time] input").FillAsync("14:20");
            await Assertions.Expect(page.Page.Locator("[data-cell=reading]")).ToContainTextAsync("3 de diciembre de 2026");
            await Assertions.Expect(page.Cell("dial-today").Locator("p").First).ToHaveTextAsync(chain.Total.InWords().Replace("add", "suma", StringComparison.Ordinal).Replace('.', ','));
            await Assertions.Expect(page.Cell("dial-today")).ToContainTextAsync(ReadingChain.TimeText(chain.Clock).Replace('.', ',') + " el 3 de diciembre de 2026 (UTC-3)");
            await Assertions.Expect(page.Cell("steps")).ToContainTextAsync("suma 93,2 min: el cuadrante está al oeste del meridiano de referencia");
            Assert.DoesNotMatch(@"\b(the|is|on|add|subtract|time|clock)\b", await page.Page.InnerTextAsync("main"));
            Assert.True(await page.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth") <= 320);
            Assert.Empty((await page.Page.RunAxe()).Violations.Select(v => v.Id + " " + v.Nodes[0].Html));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    public static TheoryData<string, DialProfile> Dials => new()
    {
        { "as it is", DialProfile.Faultless },
        { "for another latitude, style to the place", new DialProfile { ScaleLatitude = Latitude.FromDegrees(49), Style = SunLessons.Dials.StyleSet.ForPlace } },
        { "noon line", new DialProfile { Setting = new DialSetting.NoonLine(Azimuth.FromDegrees(12.5)) } },
        { "needle", new DialProfile { Setting = new DialSetting.NeedleOnLine(new CompassLine(MagneticDeclination.FromDegrees(-15))) } },
        { "compass", new DialProfile { Setting = new DialSetting.CompassShowed(new Compass(CompassBuild.CardReadAtLubberLine, CompassGraduation.Anticlockwise, Angle.FromDegrees(1)), CompassReading.FromDegrees(340)) } },
    };

    /// <summary>The C# that the page carries makes the same dial: compared by what both read.</summary>
    [Theory]
    [MemberData(nameof(Dials))]
    public async Task Every_kind_of_dial_becomes_a_page_that_reads_as_the_library_does(string kind, DialProfile dial)
    {
        var folder = Directory.CreateTempSubdirectory("sunlessons-dial-").FullName;
        try
        {
            var place = Gazetteer.Towns.First(town => town.Name == "Kathmandu");
            await PublishedLessons.NewPublisher().PublishDialAsync(place, dial, folder, singleFile: false);
            await using var browser = await BrowserPage.OpenAsync(320, 640);
            var page = new PublishedPage(browser);
            await page.OpenAsync(new Uri(Path.Combine(folder, "my-dial.html")));
            await page.Page.Locator("input[type=date]").FillAsync("2026-03-20");
            await page.Page.Locator("[data-part=dial-time] input").FillAsync("10:40");
            var read = Assert.IsType<ClockReading.One>(ClockFromDial.Read(place, new NodaTime.LocalDate(2026, 3, 20), DialTime.FromHoursMinutes(10, 40), dial));
            await Assertions.Expect(page.Cell("dial-today")).ToContainTextAsync(read.Chain.Summary);
            Assert.NotEmpty(kind);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
