using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using SunLessons.Figures;
using SunLessons.Web.Pages;
using SunLessons.Web.Safety;
using SunLessons.Web.Sessions;

namespace SunLessons.Web.Hosting;

/// <summary>The pages as a running server on this machine's loopback address.</summary>
public sealed class PagesServer : IAsyncDisposable
{
    private readonly WebApplication _app;

    private PagesServer(WebApplication app, PageToken token, string address)
    {
        _app = app;
        Token = token;
        Address = address;
    }

    /// <summary>The address without its token, such as <c>http://127.0.0.1:41234</c>.</summary>
    public string Address { get; }

    /// <summary>The token of this start.</summary>
    public PageToken Token { get; }

    /// <summary>The address to open: with the token, once; a cookie takes over from there.</summary>
    public string AddressWithToken => $"{Address}/?{AccessGuard.TokenParameter}={Token.Text}";

    /// <summary>Starts serving.</summary>
    /// <exception cref="IOException">The wanted port is taken.</exception>
    public static async Task<PagesServer> StartAsync(PagesOptions options, CancellationToken cancellation = default)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            // The program may be started from any folder: files are found beside it, not where the user stands.
            ContentRootPath = AppContext.BaseDirectory,
            ApplicationName = "SunLessons.App",
        });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.UseUrls($"http://127.0.0.1:{options.Port}");

        // No request line is logged: addresses may hold the token, and nobody reads them.
        builder.Logging.ClearProviders();
        builder.Logging.AddSimpleConsole(console => console.SingleLine = true);
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        // It warns that keys are kept unencrypted: they are kept in memory and end with the process.
        builder.Logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);

        var token = PageToken.Create();
        builder.Services.AddSingleton(token);
        builder.Services.AddSingleton(options);
        builder.Services.AddSingleton(new LearnerSettings(options.LearnerFolder));
        builder.Services.AddSingleton<LessonSessions>();
        // Keys live only as long as the process: nothing is written to the user's home for them.
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();
        builder.Services.AddRazorComponents().AddInteractiveServerComponents();

        var app = builder.Build();
        app.Use((context, next) =>
        {
            ContentPolicy.Apply(context);
            return next(context);
        });
        app.UseMiddleware<AccessGuard>(token);
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapGet("/figures/plotly.js", PlotlyScriptFile);
        app.MapGet(AnswerDownload.Pattern, AnswerDownload.Of);
        app.MapRazorComponents<Root>()
            // The frame policy stands in our own header already; two headers would only confuse a reader.
            .AddInteractiveServerRenderMode(mode => mode.ContentSecurityFrameAncestorsPolicy = null);

        await app.StartAsync(cancellation);
        var address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        return new PagesServer(app, token, address.TrimEnd('/'));
    }

    /// <summary>Completes when the program is asked to stop (Ctrl+C).</summary>
    public Task WaitForStopAsync(CancellationToken cancellation = default) => ((IHost)_app).WaitForShutdownAsync(cancellation);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _app.Services.GetRequiredService<LessonSessions>().DisposeAsync();
        await _app.DisposeAsync();
    }

    private static IResult PlotlyScriptFile(HttpContext context)
    {
        // The script is part of the plotting package and changes only with it.
        context.Response.Headers.CacheControl = "private, max-age=86400";
        return Results.Stream(PlotlyScript.Open(), "text/javascript; charset=utf-8");
    }
}
