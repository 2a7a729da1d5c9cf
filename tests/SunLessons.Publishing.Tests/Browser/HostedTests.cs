using System.Net;
using Microsoft.Playwright;
using SunLessons.App.Tests.Browser;
using SunLessons.Publishing.Tests.Support;

namespace SunLessons.Publishing.Tests.Browser;

/// <summary>Published lessons on a plain web host that knows nothing but files, and after that host is gone.</summary>
[Trait("needs", "browser")]
public sealed class HostedTests(PublishedLessons published)
{
    [Fact]
    public async Task Lessons_work_from_a_host_and_go_on_working_when_it_is_gone()
    {
        var host = new PlainHost(published.Folder);
        await using var browser = await BrowserPage.OpenAsync();
        var lesson = new PublishedPage(browser);
        await lesson.OpenAsync(new Uri(host.Address, "06-your-own-noon.html"));
        await lesson.Page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
        await lesson.Page.WaitForFunctionAsync("async () => { for (const n of await caches.keys()) if ((await (await caches.open(n)).keys()).length > 10) return true; return false; }");
        await lesson.Page.ReloadAsync();
        await lesson.LiveAsync();
        await host.DisposeAsync();

        await lesson.OpenAsync(new Uri(host.Address, "07-the-sun-is-not-a-good-clock.html"));
        await lesson.PredictAsync();
        await Assertions.Expect(lesson.Page.Locator("section[data-role=experiment] input[type=range]").First).ToBeEnabledAsync();
        Assert.Empty(browser.Foreign);
    }

    /// <summary>Serves the files of a folder on loopback, each with the type that its ending has everywhere.</summary>
    private sealed class PlainHost : IAsyncDisposable
    {
        private readonly HttpListener _listener = new();
        private readonly Task _serving;

        public PlainHost(string folder)
        {
            using var free = new System.Net.Sockets.TcpListener(IPAddress.Loopback, 0);
            free.Start();
            Address = new Uri($"http://127.0.0.1:{((IPEndPoint)free.LocalEndpoint).Port}/");
            free.Stop();
            _listener.Prefixes.Add(Address.ToString());
            _listener.Start();
            _serving = Task.Run(async () =>
            {
                while (_listener.IsListening)
                {
                    HttpListenerContext context;
                    try
                    {
                        context = await _listener.GetContextAsync();
                    }
                    catch (Exception gone) when (gone is HttpListenerException or ObjectDisposedException)
                    {
                        return;
                    }

                    var file = Path.Combine(folder, context.Request.Url!.AbsolutePath.TrimStart('/'));
                    context.Response.ContentType = Path.GetExtension(file) switch { ".html" => "text/html; charset=utf-8", ".js" => "text/javascript", ".css" => "text/css", ".svg" => "image/svg+xml", ".woff2" => "font/woff2", _ => "application/octet-stream" };
                    context.Response.StatusCode = File.Exists(file) ? 200 : 404;
                    if (File.Exists(file))
                    {
                        await context.Response.OutputStream.WriteAsync(await File.ReadAllBytesAsync(file));
                    }

                    context.Response.Close();
                }
            });
        }

        public Uri Address { get; }

        public async ValueTask DisposeAsync()
        {
            _listener.Stop();
            await _serving;
            _listener.Close();
        }
    }
}
