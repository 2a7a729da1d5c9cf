namespace SunLessons.Figures;

/// <summary>A thin reference line across a figure: noon, zero error, a zone's meridian.</summary>
/// <param name="Across">True for a line from left to right at a height; false for one from bottom to top.</param>
/// <param name="At">Where, in the unit of the axis it crosses.</param>
/// <param name="Text">Its words; empty for none.</param>
public sealed record Mark(bool Across, double At, string Text);
