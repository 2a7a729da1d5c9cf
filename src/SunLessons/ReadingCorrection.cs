using System.Globalization;

namespace SunLessons;

/// <summary>
/// An amount of time to be ADDED to a dial reading on the way to the clock; negative amounts are taken off. The default value is zero.
/// The sign is decided where one of these is made and nowhere else.
/// </summary>
public readonly record struct ReadingCorrection : IComparable<ReadingCorrection>
{
    private ReadingCorrection(double minutes) => Minutes = minutes;

    /// <summary>Minutes of time to be added to the reading.</summary>
    public double Minutes { get; }

    /// <summary>Makes a correction from minutes to be added to the reading.</summary>
    public static ReadingCorrection FromMinutes(double minutes) => new(minutes);

    /// <inheritdoc/>
    public int CompareTo(ReadingCorrection other) => Minutes.CompareTo(other.Minutes);

    /// <summary>In words: <c>add 20.5 min</c>, <c>subtract 4.0 min</c> or <c>add 0.0 min</c>; one decimal, invariant culture.</summary>
    public string InWords()
    {
        var rounded = Math.Round(Minutes, 1, MidpointRounding.AwayFromZero);
        return (rounded < 0 ? "subtract " : "add ") + Math.Abs(rounded).ToString("0.0", CultureInfo.InvariantCulture) + " min";
    }

    /// <summary>Signed minutes, such as <c>+20.5 min</c>.</summary>
    public override string ToString() => Minutes.ToString("+0.0##;-0.0##;0.0", CultureInfo.InvariantCulture) + " min";

    /// <summary>One correction after another.</summary>
    public static ReadingCorrection operator +(ReadingCorrection a, ReadingCorrection b) => new(a.Minutes + b.Minutes);

    /// <summary>The opposite correction.</summary>
    public static ReadingCorrection operator -(ReadingCorrection a) => new(-a.Minutes);
}
