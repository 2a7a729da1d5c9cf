namespace SunLessons.Logs;

/// <summary>
/// What the readings of a flat dial can tell at best: four combinations of the six faults (f the latitude, t twist, e east edge, n north edge raised,
/// s style northward, l lines northward; small faults). A rigid dial tells only where its style points (two numbers), how it is turned about it,
/// and whether its lines fit the style.
/// </summary>
public enum Combination
{
    /// <summary>Clock slow − 4 (t sin f + e cos f), minutes: the same at every hour and season.</summary>
    Constant,

    /// <summary>t cos f − e sin f, degrees: the style points off the pole sideways, positive as a clockwise twist turns it.</summary>
    StyleSideways,

    /// <summary>s + n, degrees: the style points off the pole in height, positive as for a place further north.</summary>
    StyleForLatitude,

    /// <summary>l − s, degrees: the hour lines were drawn for a latitude further north than the style's.</summary>
    LinesAgainstStyle,
}
