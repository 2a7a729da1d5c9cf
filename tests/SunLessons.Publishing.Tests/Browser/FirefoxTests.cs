using SunLessons.Publishing.Tests.Support;

namespace SunLessons.Publishing.Tests.Browser;

/// <summary>A second browser opens published lessons from a disk by itself.</summary>
[Trait("needs", "firefox")]
public sealed class FirefoxTests(PublishedLessons published)
{
    private const string Status = "document.querySelector('section[data-role=experiment] .figure [role=status]').textContent";
    private const string Range = "document.querySelector('section[data-role=experiment] input[type=range]')";

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_lesson_wakes_in_Firefox_from_a_disk_and_its_figure_follows(bool singleFile)
    {
        await using var firefox = await Firefox.OpenAsync();
        await firefox.GoAsync(new Uri(Path.Combine(singleFile ? published.Single : published.Folder, "06-your-own-noon.html")));
        await firefox.WaitAsync("document.documentElement.dataset.lesson === 'live'");
        Assert.Equal("true", await firefox.EvaluateAsync($"{Range}.disabled"));
        await firefox.EvaluateAsync("document.querySelectorAll('[data-part=prediction]').forEach(p => { p.querySelector('input[type=radio]').click(); p.querySelector('button.chief').click(); })");
        await firefox.WaitAsync($"!{Range}.disabled");
        await firefox.WaitAsync($"{Status}.includes('+94.9 min')");
        await firefox.EvaluateAsync($"({Range}.value = '1', {Range}.dispatchEvent(new Event('input')))");
        await firefox.WaitAsync($"{Status}.includes('+90.9 min')");
        Assert.NotEqual("0", await firefox.EvaluateAsync("document.querySelectorAll('section[data-role=experiment] .figure-plot svg').length"));
    }
}
