using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.Browser;

/// <summary>Tests that drive the real program in a real browser, a fresh one of each for every test.</summary>
public abstract class DrivenPages : IAsyncLifetime
{
    private protected RunningPages Pages { get; private set; } = null!;

    private protected BrowserPage Browser { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        Pages = await RunningPages.StartAsync();
        Browser = await BrowserPage.OpenAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await Browser.DisposeAsync();
        await Pages.DisposeAsync();
        GC.SuppressFinalize(this);
    }
}
