using System.Collections.Frozen;

namespace SunLessons.Notebooks.Markup;

/// <summary>
/// The words of the TeX subset that lessons use, with their Unicode signs (Unicode Standard, blocks Greek, Mathematical
/// Operators and Arrows; the TeX names as in Knuth, The TeXbook, appendix F).
/// </summary>
internal static class TexSymbols
{
    /// <summary>Names of numbers and angles: drawn slanted.</summary>
    public static readonly FrozenDictionary<string, string> Letters = new Dictionary<string, string>
    {
        ["alpha"] = "α",
        ["beta"] = "β",
        ["gamma"] = "γ",
        ["delta"] = "δ",
        ["epsilon"] = "ϵ",
        ["varepsilon"] = "ε",
        ["zeta"] = "ζ",
        ["eta"] = "η",
        ["theta"] = "θ",
        ["lambda"] = "λ",
        ["mu"] = "μ",
        ["nu"] = "ν",
        ["xi"] = "ξ",
        ["pi"] = "π",
        ["rho"] = "ρ",
        ["sigma"] = "σ",
        ["tau"] = "τ",
        ["phi"] = "ϕ",
        ["varphi"] = "φ",
        ["chi"] = "χ",
        ["psi"] = "ψ",
        ["omega"] = "ω",
        ["Gamma"] = "Γ",
        ["Delta"] = "Δ",
        ["Theta"] = "Θ",
        ["Lambda"] = "Λ",
        ["Sigma"] = "Σ",
        ["Phi"] = "Φ",
        ["Psi"] = "Ψ",
        ["Omega"] = "Ω",
        ["ell"] = "ℓ",
        ["infty"] = "∞",
    }.ToFrozenDictionary();

    /// <summary>Names of functions: drawn upright, applied to what follows.</summary>
    public static readonly FrozenSet<string> Functions =
        new[] { "sin", "cos", "tan", "cot", "sec", "csc", "arcsin", "arccos", "arctan", "ln", "log", "exp", "max", "min" }.ToFrozenSet();

    /// <summary>Signs between or before terms.</summary>
    public static readonly FrozenDictionary<string, string> Operators = new Dictionary<string, string>
    {
        ["times"] = "×",
        ["cdot"] = "⋅",
        ["div"] = "÷",
        ["pm"] = "±",
        ["mp"] = "∓",
        ["le"] = "≤",
        ["leq"] = "≤",
        ["ge"] = "≥",
        ["geq"] = "≥",
        ["ne"] = "≠",
        ["neq"] = "≠",
        ["approx"] = "≈",
        ["to"] = "→",
        ["rightarrow"] = "→",
        ["Rightarrow"] = "⇒",
        ["degree"] = "°",
        ["circ"] = "°",
        ["prime"] = "′",
        ["ldots"] = "…",
        ["sum"] = "∑",
        ["%"] = "%",
    }.ToFrozenDictionary();

    /// <summary>Spaces, in em (TeX: a thin space is 1/6 em, a medium one 2/9, a thick one 5/18, a quad 1).</summary>
    public static readonly FrozenDictionary<string, string> Spaces = new Dictionary<string, string>
    {
        [","] = "0.167em",
        [":"] = "0.222em",
        [";"] = "0.278em",
        [" "] = "0.25em",
        ["quad"] = "1em",
        ["qquad"] = "2em",
        ["!"] = "-0.167em",
    }.ToFrozenDictionary();
}
