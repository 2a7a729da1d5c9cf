using Microsoft.AspNetCore.Http;

namespace SunLessons.Web.Safety;

/// <summary>
/// Stands before every page, file and socket: the request must name this machine as its host, must not come from another
/// site's page, and must carry the token (once, in the address) or the cookie that the token was exchanged for.
/// It runs before everything else, so a socket of another origin never reaches the pages.
/// </summary>
public sealed class AccessGuard(RequestDelegate next, PageToken token)
{
    /// <summary>Name of the address parameter that carries the token.</summary>
    public const string TokenParameter = "token";

    /// <summary>Checks one request.</summary>
    public async Task InvokeAsync(HttpContext context)
    {
        var request = context.Request;
        var port = context.Connection.LocalPort;

        // A foreign name that resolves to this machine (DNS rebinding) still sends its own name here.
        if (!IsOwnHost(request.Host, port))
        {
            await Refuse(context, StatusCodes.Status400BadRequest,
                $"Host {Shown(request.Host.Value)} is not this machine's; open the address that SunLessons printed, on 127.0.0.1.");
            return;
        }

        if (!IsOwnOrigin(request, port))
        {
            await Refuse(context, StatusCodes.Status403Forbidden,
                "This request comes from another site's page and is refused; open the address that SunLessons printed.");
            return;
        }

        var cookieName = CookieName(port);
        if (request.Query.TryGetValue(TokenParameter, out var presented))
        {
            if (!HttpMethods.IsGet(request.Method) || !token.Matches(presented))
            {
                await Refuse(context, StatusCodes.Status403Forbidden,
                    "The token in this address is not the one of the running SunLessons; copy the whole address that it printed when it started.");
                return;
            }

            context.Response.Cookies.Append(cookieName, token.Text, new CookieOptions
            {
                HttpOnly = true,
                SameSite = SameSiteMode.Strict,
                Path = "/",
                IsEssential = true,
            });

            // The token leaves the address bar at once: it should not be copied along with a page.
            context.Response.Redirect(PathWithoutToken(request));
            return;
        }

        if (!token.Matches(request.Cookies[cookieName]))
        {
            await Refuse(context, StatusCodes.Status403Forbidden,
                "This page needs the address with its token that SunLessons printed when it started; copy it from there.");
            return;
        }

        await next(context);
    }

    /// <summary>Cookies are shared by all ports of a host, so the port stands in the name: two running copies do not disturb each other.</summary>
    internal static string CookieName(int port) => $"sunlessons-{port}";

    private static bool IsOwnHost(HostString host, int port) =>
        host.HasValue && host.Host is "127.0.0.1" or "localhost" && (host.Port ?? 80) == port;

    private static bool IsOwnOrigin(HttpRequest request, int port)
    {
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        if (site is "cross-site" or "same-site")
        {
            return false;
        }

        var origin = request.Headers.Origin.ToString();
        if (origin.Length > 0)
        {
            return origin == $"http://127.0.0.1:{port}" || origin == $"http://localhost:{port}";
        }

        // A browser always names the origin of a socket and of anything that is not a plain GET.
        var isSocket = request.Headers.Upgrade.Count > 0
            || (HttpMethods.IsConnect(request.Method) && request.Headers.ContainsKey(":protocol"));
        return !isSocket && (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method));
    }

    private static string PathWithoutToken(HttpRequest request)
    {
        var rest = request.Query.Where(pair => pair.Key != TokenParameter)
            .SelectMany(pair => pair.Value.Select(value => KeyValuePair.Create(pair.Key, value)));
        return request.PathBase + request.Path + QueryString.Create(rest);
    }

    private static string Shown(string? host) => string.IsNullOrEmpty(host) ? "(none)" : new string([.. host.Take(80)]);

    private static Task Refuse(HttpContext context, int status, string sentence)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(sentence);
    }
}
