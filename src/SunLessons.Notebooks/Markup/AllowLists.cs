using System.Collections.Frozen;

namespace SunLessons.Notebooks.Markup;

/// <summary>
/// What may stand in markup that came from a file or a cell. Everything that is not named here is taken out. Nothing in
/// the lists can run, load from elsewhere, take input, style the page or leave its place in it.
/// </summary>
internal static class AllowLists
{
    public static readonly FrozenSet<string> HtmlElements = Set(
        "h1 h2 h3 h4 h5 h6 p br hr div span section article aside figure figcaption blockquote pre code kbd samp var " +
        "strong b em i u s del ins mark small sub sup abbr cite dfn q time a img " +
        "ul ol li dl dt dd table caption thead tbody tfoot tr th td colgroup col details summary");

    public static readonly FrozenSet<string> MathElements = Set(
        "math mrow mi mn mo mtext mspace msub msup msubsup mfrac msqrt mroot munder mover munderover mtable mtr mtd mstyle mpadded");

    public static readonly FrozenSet<string> SvgElements = Set(
        "svg g defs title desc path rect circle ellipse line polyline polygon text tspan textPath clipPath marker pattern " +
        "linearGradient radialGradient stop use symbol mask");

    public static readonly FrozenSet<string> Attributes = Set(
        // HTML
        "class id title lang dir href src alt width height colspan rowspan scope headers start reversed value datetime open cite role " +
        "aria-label aria-labelledby aria-describedby aria-hidden aria-level aria-live aria-roledescription " +
        "data-value " +
        // MathML Core
        "display mathvariant stretchy fence separator form lspace rspace linethickness columnalign rowalign columnspan depth displaystyle scriptlevel accent xmlns " +
        // SVG: geometry, then presentation
        "viewBox preserveAspectRatio version x y x1 y1 x2 y2 dx dy cx cy r rx ry fx fy d points transform pathLength rotate textLength lengthAdjust startOffset " +
        "markerWidth markerHeight markerUnits refX refY orient patternUnits patternContentUnits patternTransform gradientUnits gradientTransform spreadMethod offset clipPathUnits maskUnits maskContentUnits " +
        "fill fill-opacity fill-rule stroke stroke-width stroke-opacity stroke-dasharray stroke-dashoffset stroke-linecap stroke-linejoin stroke-miterlimit opacity color visibility " +
        "font-family font-size font-style font-weight text-anchor dominant-baseline alignment-baseline baseline-shift letter-spacing word-spacing text-decoration writing-mode " +
        "stop-color stop-opacity clip-path clip-rule mask marker-start marker-mid marker-end vector-effect shape-rendering text-rendering paint-order focusable tabindex");

    public static readonly FrozenSet<string> Schemes = Set("http https mailto");

    /// <summary>Attributes whose value is the id of another element, or several ids.</summary>
    public static readonly FrozenSet<string> IdReferences = Set("aria-labelledby aria-describedby headers");

    private static FrozenSet<string> Set(string words) =>
        words.Split(' ', StringSplitOptions.RemoveEmptyEntries).ToFrozenSet(StringComparer.OrdinalIgnoreCase);
}
