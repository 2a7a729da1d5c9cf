namespace SunLessons.Uncertainty;

/// <summary>How first order did beside Monte Carlo (JCGM 101, clause 8).</summary>
public enum FirstOrderVerdict
{
    /// <summary>Both ends of the interval agree to the digits asked for: first order may be used.</summary>
    Agrees,

    /// <summary>An end differs by more: use the Monte Carlo interval.</summary>
    Fails,

    /// <summary>Too few draws to decide: the draws' own scatter is not small against the tolerance.</summary>
    NotSettled,
}
