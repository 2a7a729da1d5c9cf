using System.ComponentModel;
using System.Globalization;

namespace SunLessons.Cells.Running;

/// <summary>The text of a value inside a markup cell. Learners write <c>{{ value }}</c>, never this.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class MarkupText
{
    /// <summary>A value as text, numbers with a point whatever the country; empty for null.</summary>
    /// <param name="value">The value.</param>
    public static string Of(object? value) =>
        value is null ? "" : PlainValue.Of(value) ?? Convert.ToString(value, CultureInfo.InvariantCulture) ?? "";
}
