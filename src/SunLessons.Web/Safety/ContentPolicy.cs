using Microsoft.AspNetCore.Http;

namespace SunLessons.Web.Safety;

/// <summary>
/// The headers that bound what a page may load and run: everything from this address, no inline script, no evaluated text,
/// no frame around it. Inline style is allowed because the plotting and the editing library set styles on elements.
/// </summary>
public static class ContentPolicy
{
    /// <summary>The value of the Content-Security-Policy header.</summary>
    public const string Value =
        "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; "
        + "font-src 'self' data:; connect-src 'self'; worker-src 'self' blob:; base-uri 'self'; form-action 'self'; "
        + "frame-ancestors 'none'";

    /// <summary>Sets the headers on a response; refusals get them too.</summary>
    public static void Apply(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Value;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
    }
}
