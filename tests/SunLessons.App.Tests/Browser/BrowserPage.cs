using Microsoft.Playwright;

namespace SunLessons.App.Tests.Browser;

/// <summary>
/// A page in headless Chromium that reaches 127.0.0.1 and files, and nothing else: names do not resolve, and every request that would leave
/// the machine is refused and counted. Messages on the browser's console are kept: a refused script shows there.
/// </summary>
internal sealed class BrowserPage : IAsyncDisposable
{
    private readonly IPlaywright _playwright;
    private readonly IBrowser _browser;
    private readonly List<string> _foreign = [];
    private readonly List<string> _problems = [];

    private BrowserPage(IPlaywright playwright, IBrowser browser, IPage page)
    {
        _playwright = playwright;
        _browser = browser;
        Page = page;
    }

    public IPage Page { get; }

    /// <summary>Addresses of the requests that were refused because they would have left this machine.</summary>
    public IReadOnlyList<string> Foreign => _foreign;

    /// <summary>Errors that the page's own script reported.</summary>
    public IReadOnlyList<string> Problems => _problems;

    public static async Task<BrowserPage> OpenAsync(int width = 1200, int height = 900)
    {
        var playwright = await Playwright.CreateAsync();
        var browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Executable(),
            Args = ["--no-sandbox", "--disable-background-networking", "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"],
        });
        var context = await browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = height } });
        var page = await context.NewPageAsync();
        var opened = new BrowserPage(playwright, browser, page);
        page.PageError += (_, error) => opened._problems.Add(error);
        await context.RouteAsync("**/*", async route =>
        {
            var address = new Uri(route.Request.Url);
            if (address.Host == "127.0.0.1" || address.Scheme is "data" or "blob" or "file")
            {
                await route.ContinueAsync();
            }
            else
            {
                lock (opened._foreign)
                {
                    opened._foreign.Add(route.Request.Url);
                }

                await route.AbortAsync();
            }
        });
        return opened;
    }

    public async ValueTask DisposeAsync()
    {
        await _browser.DisposeAsync();
        _playwright.Dispose();
    }

    /// <summary>The browser of this machine.</summary>
    public static string Executable() =>
        new[] { "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome" }.FirstOrDefault(File.Exists)
        ?? throw new InvalidOperationException("No Chromium was found; install Debian's package chromium, or run tests/run --fast.");
}
