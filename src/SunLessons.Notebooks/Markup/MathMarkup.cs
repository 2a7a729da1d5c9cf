namespace SunLessons.Notebooks.Markup;

/// <summary>What became of a formula.</summary>
/// <param name="Html">MathML when the formula was understood; otherwise its source as code, so that nothing is lost.</param>
/// <param name="Problem">Null when the formula was understood; otherwise one sentence that names what was not.</param>
public sealed record MathMarkup(string Html, string? Problem);
