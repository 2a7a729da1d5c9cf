namespace SunLessons.Publishing.Lessons;

/// <summary>An HTML or SVG cell with its values in their places.</summary>
internal sealed record FilledMarkup(string Text);
