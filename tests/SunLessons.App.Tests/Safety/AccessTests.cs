using System.Net;
using System.Net.Sockets;
using System.Net.WebSockets;
using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.Safety;

/// <summary>Who may reach the pages: this machine's own browser, with the token, and nobody else.</summary>
public sealed class AccessTests : IAsyncLifetime
{
    private RunningPages _pages = null!;

    public async ValueTask InitializeAsync() => _pages = await RunningPages.StartAsync();

    public async ValueTask DisposeAsync() => await _pages.DisposeAsync();

    [Fact]
    public async Task Without_a_token_there_is_one_sentence_and_nothing_else()
    {
        using var client = Client();
        foreach (var path in new[] { "", "lesson/your-own-noon", "figures/plotly.js", "answers/your-own-noon", "_framework/blazor.web.js", "_blazor/negotiate" })
        {
            var answer = await client.GetAsync(new Uri(_pages.Root, path));
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
            Assert.Equal("This page needs the address with its token that SunLessons printed when it started; copy it from there.", await answer.Content.ReadAsStringAsync());
        }
    }

    [Fact]
    public async Task A_wrong_token_is_refused()
    {
        using var client = Client();
        var answer = await client.GetAsync(new Uri(_pages.Root, "?token=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"));
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.False(answer.Headers.Contains("Set-Cookie"));
    }

    [Fact]
    public async Task The_token_is_exchanged_for_a_cookie_that_script_cannot_read_and_other_sites_cannot_send()
    {
        using var client = Client();
        var answer = await client.GetAsync(_pages.AddressWithToken);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("/", answer.Headers.Location!.ToString());
        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);

        var page = await client.SendAsync(Request(HttpMethod.Get, "", cookie));
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        Assert.Contains("<title>SunLessons</title>", await page.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("evil.example")]
    [InlineData("evil.example:80")]
    [InlineData("127.0.0.1")]
    [InlineData("127.0.0.1.evil.example")]
    public async Task A_foreign_host_name_is_refused_even_with_the_cookie(string host)
    {
        var cookie = await CookieAsync();
        using var client = Client();
        var request = Request(HttpMethod.Get, "", cookie);
        request.Headers.Host = host;
        var answer = await client.SendAsync(request);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.StartsWith($"Host {host} is not this machine's", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://evil.example")]
    [InlineData("https://127.0.0.1")]
    [InlineData("null")]
    public async Task A_foreign_origin_is_refused_even_with_the_cookie(string origin)
    {
        var cookie = await CookieAsync();
        using var client = Client();
        var request = Request(HttpMethod.Post, "_blazor/negotiate?negotiateVersion=1", cookie);
        request.Headers.Add("Origin", origin);
        var answer = await client.SendAsync(request);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.StartsWith("This request comes from another site's page", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_post_that_names_no_origin_is_refused()
    {
        var cookie = await CookieAsync();
        using var client = Client();
        var answer = await client.SendAsync(Request(HttpMethod.Post, "_blazor/negotiate?negotiateVersion=1", cookie));
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Theory]
    [InlineData("http://evil.example", false)]
    [InlineData(null, false)]
    [InlineData("own", true)]
    public async Task A_socket_opens_for_our_own_page_only(string? origin, bool opens)
    {
        using var socket = new ClientWebSocket();
        socket.Options.SetRequestHeader("Cookie", (await CookieAsync()).Split(';')[0]);
        if (origin is not null)
        {
            socket.Options.SetRequestHeader("Origin", origin == "own" ? _pages.Root.ToString().TrimEnd('/') : origin);
        }

        var address = new UriBuilder(new Uri(_pages.Root, "_blazor")) { Scheme = "ws" }.Uri;
        if (opens)
        {
            await socket.ConnectAsync(address, CancellationToken.None);
            Assert.Equal(WebSocketState.Open, socket.State);
        }
        else
        {
            var refused = await Assert.ThrowsAsync<WebSocketException>(() => socket.ConnectAsync(address, CancellationToken.None));
            Assert.Contains("403", refused.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_page_of_another_site_cannot_even_fetch()
    {
        var cookie = await CookieAsync();
        using var client = Client();
        var request = Request(HttpMethod.Get, "", cookie);
        request.Headers.Add("Sec-Fetch-Site", "cross-site");
        Assert.Equal(HttpStatusCode.Forbidden, (await client.SendAsync(request)).StatusCode);
    }

    [Fact]
    public async Task Every_answer_carries_the_content_policy_and_it_allows_no_inline_script()
    {
        var cookie = await CookieAsync();
        using var client = Client();
        foreach (var request in new[] { Request(HttpMethod.Get, "", cookie), Request(HttpMethod.Get, "", null), Request(HttpMethod.Get, "figures/plotly.js", cookie) })
        {
            var answer = await client.SendAsync(request);
            var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
            var scripts = policy.Split(';').Select(part => part.Trim()).Single(part => part.StartsWith("script-src", StringComparison.Ordinal));
            Assert.Equal("script-src 'self'", scripts);
            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        }
    }

    [Fact]
    public async Task Nothing_listens_beyond_loopback()
    {
        var others = (await Dns.GetHostAddressesAsync(Dns.GetHostName())).Where(address => !IPAddress.IsLoopback(address)).ToList();
        foreach (var address in others)
        {
            using var socket = new Socket(address.AddressFamily, SocketType.Stream, ProtocolType.Tcp);
            await Assert.ThrowsAsync<SocketException>(() => socket.ConnectAsync(address, _pages.Root.Port));
        }

        Assert.Equal("127.0.0.1", _pages.Root.Host);
    }

    [Fact]
    public async Task The_files_a_page_needs_come_whole()
    {
        var cookie = await CookieAsync();
        using var client = Client();
        foreach (var (path, least) in new[]
        {
            ("_framework/blazor.web.js", 100_000), ("figures/plotly.js", 3_000_000), ("_content/SunLessons.Web/sunlessons.css", 2_000),
            ("_content/SunLessons.Web/page.js", 1_000), ("_content/BlazorMonaco/lib/monaco-editor/min/vs/editor/editor.main.js", 1_000_000),
        })
        {
            var bytes = await (await client.SendAsync(Request(HttpMethod.Get, path, cookie))).Content.ReadAsByteArrayAsync();
            Assert.True(bytes.Length > least, $"{path} came with {bytes.Length} bytes.");
        }
    }

    private static HttpClient Client() => new(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false });

    private HttpRequestMessage Request(HttpMethod method, string path, string? cookie)
    {
        var request = new HttpRequestMessage(method, new Uri(_pages.Root, path));
        if (cookie is not null)
        {
            request.Headers.Add("Cookie", cookie.Split(';')[0]);
        }

        return request;
    }

    private async Task<string> CookieAsync()
    {
        using var client = Client();
        return (await client.GetAsync(_pages.AddressWithToken)).Headers.GetValues("Set-Cookie").Single();
    }
}
