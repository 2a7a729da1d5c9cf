using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Ganss.Xss;

namespace SunLessons.Notebooks.Markup;

/// <summary>
/// Cleans HTML, SVG and MathML that came from a notebook file or from a cell's output, by allow-lists: no script, no
/// event attributes, no style, no forms, no frames, no addresses but http, https, mailto and places inside the page, no
/// picture from elsewhere. Ids get a prefix, so that a notebook can never stand in for a part of the page, and two
/// figures never share one. Safe between threads.
/// </summary>
public static partial class SafeHtml
{
    private const string HtmlNamespace = "http://www.w3.org/1999/xhtml";
    private const string MathNamespace = "http://www.w3.org/1998/Math/MathML";
    private const string SvgNamespace = "http://www.w3.org/2000/svg";

    [GeneratedRegex(@"^data:image/(png|jpeg|gif|webp);base64,[A-Za-z0-9+/=\s]+$", RegexOptions.IgnoreCase)]
    private static partial Regex InlinePicture();

    [GeneratedRegex(@"^[A-Za-z0-9_][A-Za-z0-9_ .-]*(/[A-Za-z0-9_][A-Za-z0-9_ .-]*)*$")]
    private static partial Regex LocalPath();

    [GeneratedRegex(@"^[a-z0-9][a-z0-9-]*$")]
    private static partial Regex ValueName();

    [GeneratedRegex(@"url\(\s*[""']?#([A-Za-z0-9_:.-]+)[""']?\s*\)", RegexOptions.IgnoreCase)]
    private static partial Regex LocalUrl();

    [GeneratedRegex(@"url\s*\(|expression\s*\(|@import|\\|/\*", RegexOptions.IgnoreCase)]
    private static partial Regex StyleReach();

    /// <summary>Cleans a piece of HTML (which may hold SVG and MathML).</summary>
    /// <param name="html">Anything at all.</param>
    /// <param name="idPrefix">Set before every id and every reference to one: letters, digits and hyphens.</param>
    /// <returns>Markup that is safe to put into a page; empty when nothing safe is left.</returns>
    public static string Clean(string html, string idPrefix = "n-")
    {
        // Cleaned markup is parsed again by the browser. Where a second reading gives something else, the first one was
        // not what the browser sees, and such markup is made to confuse: it is shown as plain text instead.
        string once = Pass(html, idPrefix);
        string twice = Pass(once, "");
        return twice == once ? once : $"<pre>{System.Net.WebUtility.HtmlEncode(html)}</pre>";
    }

    /// <summary>Cleans a stored "image/svg+xml" output. Anything that is not one SVG drawing gives an empty text.</summary>
    public static string CleanSvg(string svg, string idPrefix = "n-")
    {
        int start = svg.IndexOf("<svg", StringComparison.OrdinalIgnoreCase);
        if (start < 0)
        {
            return "";
        }

        string clean = Clean(svg[start..], idPrefix);
        IDocument document = new HtmlParser().ParseDocument(clean);
        IElement? drawing = document.Body?.FirstElementChild;
        return drawing?.NamespaceUri == SvgNamespace ? drawing.OuterHtml : "";
    }

    private static string Pass(string html, string idPrefix)
    {
        var sanitizer = new HtmlSanitizer();
        sanitizer.AllowedTags.Clear();
        sanitizer.AllowedTags.UnionWith(AllowLists.HtmlElements);
        sanitizer.AllowedTags.UnionWith(AllowLists.MathElements);
        sanitizer.AllowedTags.UnionWith(AllowLists.SvgElements);
        sanitizer.AllowedAttributes.Clear();
        sanitizer.AllowedAttributes.UnionWith(AllowLists.Attributes);
        sanitizer.AllowedSchemes.Clear();
        sanitizer.AllowedSchemes.UnionWith(AllowLists.Schemes);
        sanitizer.AllowedSchemes.Add("data"); // only pictures get through, below
        sanitizer.AllowedCssProperties.Clear();
        sanitizer.AllowedAtRules.Clear();
        sanitizer.AllowDataAttributes = false;
        sanitizer.KeepChildNodes = false;
        sanitizer.PostProcessDom += (_, e) => Strict(e.Document.Body!, idPrefix);
        return sanitizer.Sanitize(html);
    }

    /// <summary>
    /// What a list of names cannot say: names count only in their own namespace, HTML never stands inside a drawing or a
    /// formula (that is how cleaned markup changes its meaning when read again), and values are checked.
    /// </summary>
    private static void Strict(IElement root, string idPrefix)
    {
        foreach (INode node in root.Descendants().ToArray())
        {
            if (node is IElement element)
            {
                if (!Belongs(element, root))
                {
                    element.Remove();
                }
                else
                {
                    CheckAttributes(element, idPrefix);
                }
            }
            else if (node.NodeType != NodeType.Text)
            {
                node.Parent?.RemoveChild(node);
            }
        }
    }

    private static bool Belongs(IElement element, IElement root)
    {
        string? parent = element.ParentElement == root ? HtmlNamespace : element.ParentElement?.NamespaceUri;
        return element.NamespaceUri switch
        {
            HtmlNamespace => parent == HtmlNamespace && AllowLists.HtmlElements.Contains(element.LocalName),
            MathNamespace => AllowLists.MathElements.Contains(element.LocalName)
                && (parent == MathNamespace || (parent == HtmlNamespace && element.LocalName == "math")),
            SvgNamespace => AllowLists.SvgElements.Contains(element.LocalName)
                && (parent == SvgNamespace || (parent == HtmlNamespace && element.LocalName == "svg")),
            _ => false,
        };
    }

    private static void CheckAttributes(IElement element, string idPrefix)
    {
        bool isHtml = element.NamespaceUri == HtmlNamespace;
        foreach (IAttr attribute in element.Attributes.ToArray())
        {
            string name = attribute.Name;
            string value = attribute.Value;
            string? kept = name switch
            {
                _ when !AllowLists.Attributes.Contains(name) => null,
                "id" => idPrefix + value,
                "href" when element.LocalName == "a" && isHtml => LinkTarget(value, idPrefix),
                "href" when element.LocalName is "use" or "textPath" or "linearGradient" or "radialGradient" or "pattern" => value.StartsWith('#') ? "#" + idPrefix + value[1..] : null,
                "href" => null,
                "src" => element.LocalName == "img" && (InlinePicture().IsMatch(value) || (LocalPath().IsMatch(value) && !value.Contains(".."))) ? value : null,
                "data-value" => ValueName().IsMatch(value) ? value : null,
                "xmlns" => element.LocalName is "math" or "svg" ? value : null,
                "tabindex" => value == "0" ? value : null,
                "cite" => null,
                _ when AllowLists.IdReferences.Contains(name) => string.Join(' ', value.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(id => idPrefix + id)),
                _ when !isHtml => Reach(value, idPrefix),
                _ => value,
            };
            if (kept is null)
            {
                element.RemoveAttribute(name);
            }
            else if (kept != value)
            {
                element.SetAttribute(name, kept);
            }
        }

        if (isHtml && element.LocalName == "a" && element.GetAttribute("href") is string target && !target.StartsWith('#'))
        {
            element.SetAttribute("rel", "noopener noreferrer");
        }
    }

    private static string? LinkTarget(string value, string idPrefix)
    {
        if (value.StartsWith("#value:", StringComparison.Ordinal))
        {
            return value;
        }

        if (value.StartsWith('#'))
        {
            return "#" + idPrefix + value[1..];
        }

        return Uri.TryCreate(value, UriKind.Absolute, out Uri? address) && AllowLists.Schemes.Contains(address.Scheme) ? value
            : LocalPath().IsMatch(value) && !value.Contains("..") ? value
            : null;
    }

    /// <summary>In drawings, a value may point at a part of the same drawing and at nothing else.</summary>
    private static string? Reach(string value, string idPrefix)
    {
        string named = LocalUrl().Replace(value, match => $"url(#{idPrefix}{match.Groups[1].Value})");
        return StyleReach().IsMatch(LocalUrl().Replace(named, "")) ? null : named;
    }
}
