namespace SunLessons.Figures;

/// <summary>A few words at a point of a figure.</summary>
/// <param name="X">Position along the horizontal axis.</param>
/// <param name="Y">Position along the vertical axis.</param>
/// <param name="Text">The words; short.</param>
/// <param name="Centred">Whether the words stand exactly on the point (the numeral of an hour line); otherwise near it, where there is room.</param>
public sealed record Note(double X, double Y, string Text, bool Centred = false);
