using System.Globalization;
using SunLessons.Uncertainty;

namespace SunLessons.Readings;

/// <summary>The unit in which the size of an uncertainty component is given.</summary>
public enum ComponentUnit
{
    /// <summary>Degrees of arc.</summary>
    Degrees,

    /// <summary>Minutes of time.</summary>
    Minutes,
}

/// <summary>How large one cause of doubt in a reading is, and where that size comes from.</summary>
/// <param name="Name">The cause in plain words, such as <c>level, east to west</c>.</param>
/// <param name="Size">Standard uncertainty if <paramref name="Shape"/> is normal, otherwise the half-width; in <paramref name="Unit"/>, never negative.</param>
/// <param name="Unit">Degrees or minutes of time.</param>
/// <param name="Shape">What is known between the limits.</param>
/// <param name="Source">The source of the size, or "common practice, no source", or the reasoning that led to it.</param>
public sealed record ComponentSize(string Name, double Size, ComponentUnit Unit, Distribution Shape, string Source)
{
    /// <summary>The standard uncertainty in <see cref="Unit"/> (GUM 4.3.7, 4.3.9).</summary>
    public double StandardUncertainty => Shape switch
    {
        Distribution.Uniform => Size / Math.Sqrt(3.0),
        Distribution.Triangular => Size / Math.Sqrt(6.0),
        _ => Size,
    };

    /// <summary>Such as <c>level, east to west: within 1 degrees either way</c>.</summary>
    public override string ToString()
    {
        var size = Size.ToString("0.###", CultureInfo.InvariantCulture);
        var unit = Unit == ComponentUnit.Degrees ? "degrees" : "minutes";
        return Shape == Distribution.Normal ? $"{Name}: {size} {unit} standard" : $"{Name}: within {size} {unit} either way";
    }
}
