using System.Text.Json.Nodes;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using SunLessons.Notebooks.Markup;

namespace SunLessons.Notebooks.Tests.Markup;

/// <summary>
/// Hostile notebooks. The attacks are common practice of the trade (no single source): each is read again as a browser
/// would, and nothing that can run, load, submit, restyle or impersonate may be left.
/// </summary>
public class HostileMarkupTests
{
    public static TheoryData<string> Attacks() =>
    [
        "<script>alert(1)</script>",
        "<SCRIPT SRC=https://evil.example/x.js></SCRIPT>",
        "<img src=x onerror=alert(1)>",
        "<img src=\"https://evil.example/a.png\">",
        "<img src=\"//evil.example/a.png\">",
        "<img src=\"\\\\evil.example\\a.png\">",
        "<img srcset=\"https://evil.example/a.png 2x\">",
        "<img src=\"data:image/svg+xml;base64,PHN2ZyBvbmxvYWQ9ImFsZXJ0KDEpIj4=\">",
        "<img src=\"../../secret.png\">",
        "<a href=\"javascript:alert(1)\">x</a>",
        "<a href=\"  jAvA\tscript:alert(1)\">x</a>",
        "<a href=\"&#106;avascript:alert(1)\">x</a>",
        "<a href=\"vbscript:x\">x</a>",
        "<a href=\"data:text/html,<script>alert(1)</script>\">x</a>",
        "<a href=\"data:image/png;base64,AAAA\">x</a>",
        "<a href=\"blob:https://a/b\">x</a>",
        "<a href=\"file:///etc/passwd\">x</a>",
        "<a href=\"https://example.org\" target=\"_top\" onclick=\"alert(1)\" ping=\"https://evil.example\">x</a>",
        "[x](javascript:alert(1))",
        "[x](data:text/html;base64,PHNjcmlwdD4=)",
        "![x](https://evil.example/pixel.png)",
        "![x](javascript:alert(1))",
        "<svg onload=alert(1)></svg>",
        "<svg><script>alert(1)</script></svg>",
        "<svg><script href=\"data:,alert(1)\"/></svg>",
        "<svg><a xlink:href=\"javascript:alert(1)\"><text>x</text></a></svg>",
        "<svg><use href=\"https://evil.example/a.svg#x\"/></svg>",
        "<svg><use xlink:href=\"data:image/svg+xml,<svg id='x' onload='alert(1)'/>#x\"/></svg>",
        "<svg><image href=\"https://evil.example/a.png\"/></svg>",
        "<svg><foreignObject><iframe src=\"https://evil.example\"></iframe></foreignObject></svg>",
        "<svg><animate attributeName=href values=\"javascript:alert(1)\"/></svg>",
        "<svg><set attributeName=\"onmouseover\" to=\"alert(1)\"/></svg>",
        "<svg><style>@import 'https://evil.example/a.css'</style></svg>",
        "<svg><rect fill=\"url(https://evil.example/a)\"/></svg>",
        "<svg><rect fill=\"u\\72l(https://evil.example/a)\"/></svg>",
        "<svg><rect fill=\"url(#a) url(https://evil.example/a)\"/></svg>",
        "<svg><title><img src=x onerror=alert(1)></title></svg>",
        "<svg><desc><form action=https://evil.example><input></form></desc></svg>",
        "<div style=\"background:url(https://evil.example/a)\">x</div>",
        "<div style=\"position:fixed;inset:0\">x</div>",
        "<style>body{display:none}</style>",
        "<link rel=stylesheet href=https://evil.example/a.css>",
        "<iframe src=\"https://evil.example\"></iframe>",
        "<iframe srcdoc=\"<script>alert(1)</script>\"></iframe>",
        "<object data=\"https://evil.example\"></object>",
        "<embed src=\"https://evil.example\">",
        "<applet code=x></applet>",
        "<meta http-equiv=refresh content=\"0;url=https://evil.example\">",
        "<base href=\"https://evil.example/\">",
        "<form action=\"https://evil.example\"><input name=token><button formaction=\"javascript:alert(1)\">Go</button></form>",
        "<textarea></textarea><select></select><isindex>",
        "<video src=\"https://evil.example/a\" autoplay></video><audio src=x onerror=alert(1)></audio>",
        "<math><mtext><table><mglyph><style><!--</style><img title=\"--&gt;&lt;img src=x onerror=alert(1)&gt;\">",
        "<math><maction actiontype=\"statusline#\" xlink:href=\"javascript:alert(1)\">x</maction></math>",
        "<math href=\"javascript:alert(1)\"><mi>x</mi></math>",
        "<math><annotation-xml encoding=\"text/html\"><img src=x onerror=alert(1)></annotation-xml></math>",
        "<svg></p><style><a id=\"</style><img src=1 onerror=alert(1)>\">",
        "<form><math><mtext></form><form><mglyph><style></math><img src onerror=alert(1)>",
        "<noscript><p title=\"</noscript><img src=x onerror=alert(1)>\">",
        "<xmp><img src=x onerror=alert(1)></xmp><plaintext><script>",
        "<template><script>alert(1)</script></template>",
        "<!--[if gte IE 4]><script>alert(1)</script><![endif]-->",
        "<?xml-stylesheet href=\"javascript:alert(1)\"?>",
        "<div id=\"app\" name=\"body\">x</div>",
        "<p is=\"x-evil\" slot=\"a\" contenteditable autofocus onfocus=alert(1)>x</p>",
        "<span data-value=\"x\" data-evil=\"y\">x</span>",
        "<span data-value=\"&quot;><script>\">x</span>",
        "<b class=\"a\" \u0000onclick=alert(1)>x</b>",
        "<a href=\"#value:x&quot; onclick=&quot;alert(1)\">x</a>",
    ];

    [Theory]
    [MemberData(nameof(Attacks))]
    public void In_markdown(string attack) => AssertHarmless(LessonMarkup.ToHtml($"before {attack} after\n\n{attack}\n\n> {attack}"));

    [Theory]
    [MemberData(nameof(Attacks))]
    public void In_a_stored_html_output(string attack) => AssertHarmless(SafeOutput.ToHtml(Output("text/html", attack), "o1-"));

    [Theory]
    [MemberData(nameof(Attacks))]
    public void In_a_stored_svg_output(string attack) =>
        AssertHarmless(SafeOutput.ToHtml(Output("image/svg+xml", $"<svg xmlns=\"http://www.w3.org/2000/svg\">{attack}</svg>"), "o1-"));

    [Theory]
    [MemberData(nameof(Attacks))]
    public void In_a_stored_stream_an_error_and_plain_text(string attack)
    {
        AssertHarmless(SafeOutput.ToHtml(NotebookOutput.Stream("stdout", attack), "o1-"));
        AssertHarmless(SafeOutput.ToHtml(NotebookOutput.Error(attack, attack, [attack]), "o1-"));
        AssertHarmless(SafeOutput.ToHtml(Output("text/plain", attack), "o1-"));
    }

    [Fact]
    public void A_stored_script_is_never_shown()
    {
        Assert.Equal("", SafeOutput.ToHtml(Output("application/javascript", "alert(1)"), "o1-"));
        AssertHarmless(SafeOutput.ToHtml(Output("image/png", "\"><script>alert(1)</script>"), "o1-"));
    }

    [Fact]
    public void The_watchman_of_these_tests_sees_an_attack() =>
        Assert.ThrowsAny<Exception>(() => AssertHarmless("<p><img src=x onerror=alert(1)></p>"));

    [Fact]
    public void An_honest_drawing_comes_through_whole_with_its_own_ids()
    {
        const string drawing = """<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10" role="img" aria-labelledby="t d"><title id="t">Noon</title><desc id="d">A dial.</desc><defs><clipPath id="c"><rect width="10" height="10"></rect></clipPath><linearGradient id="g"><stop offset="0" stop-color="#000"></stop></linearGradient></defs><g clip-path="url(#c)" fill="none" stroke="#0072B2" stroke-width="2" transform="translate(1 2)"><path d="M0 0L5 5" stroke-dasharray="4 2"></path><use href="#g"></use><text x="1" y="2" text-anchor="middle" font-size="3">12 h</text></g></svg>""";
        string expected = drawing.Replace("aria-labelledby=\"t d\"", "aria-labelledby=\"f1-t f1-d\"").Replace("id=\"", "id=\"f1-").Replace("url(#c)", "url(#f1-c)").Replace("href=\"#g\"", "href=\"#f1-g\"");
        Assert.Equal(expected, SafeHtml.CleanSvg("<?xml version=\"1.0\"?>\n" + drawing, "f1-"));
    }

    private static NotebookOutput Output(string type, string text) => NotebookOutput.Display(new Dictionary<string, JsonNode> { [type] = text });

    private static void AssertHarmless(string html)
    {
        string[] elements = ["script", "style", "link", "meta", "base", "iframe", "object", "embed", "applet", "form", "input", "button", "textarea", "select", "video", "audio", "template", "noscript", "foreignobject", "animate", "set", "image", "mglyph", "maction", "annotation-xml", "xmp", "plaintext"];
        IDocument document = new HtmlParser(new HtmlParserOptions { IsScripting = true }).ParseDocument($"<!doctype html><html><head></head><body>{html}</body></html>");
        Assert.Empty(document.Head!.Children);
        foreach (IElement element in document.Body!.QuerySelectorAll("*"))
        {
            Assert.DoesNotContain(element.LocalName.ToLowerInvariant(), elements);
            foreach (IAttr attribute in element.Attributes)
            {
                string name = attribute.Name.ToLowerInvariant();
                string value = string.Concat(attribute.Value.Where(sign => !char.IsWhiteSpace(sign) && !char.IsControl(sign))).ToLowerInvariant();
                Assert.False(name.StartsWith("on"), $"{name} in {html}");
                Assert.DoesNotContain(name, (string[])["style", "srcset", "srcdoc", "action", "formaction", "target", "ping", "name", "is", "slot", "contenteditable", "autofocus", "xlink:href", "data-evil"]);
                Assert.DoesNotMatch("^(javascript|vbscript|blob|file|data:text|data:image/svg)", value);
                Assert.True(name is "class" or "title" or "alt" || !value.Contains("evil.example"), $"{name}={value}");
                if (name == "id")
                {
                    Assert.Matches("^(n|o1)-", attribute.Value);
                }

                if (name == "href")
                {
                    Assert.DoesNotMatch("^data:", value);
                }
            }
        }
    }
}
