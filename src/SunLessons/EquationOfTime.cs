using System.Globalization;

namespace SunLessons;

/// <summary>
/// Equation of time: APPARENT solar time minus mean solar time. Positive when the dial is ahead of the mean clock (early November),
/// within about −14.3 to +16.5 minutes in our age. The default value is zero.
/// It is what the dial shows too much; what must be ADDED to a reading is its opposite, a <see cref="ReadingCorrection"/>.
/// </summary>
public readonly record struct EquationOfTime
{
    private EquationOfTime(double seconds) => Seconds = seconds;

    /// <summary>Seconds of time, positive when the dial is ahead of the mean clock.</summary>
    public double Seconds { get; }

    /// <summary>Minutes of time, positive when the dial is ahead of the mean clock.</summary>
    public double Minutes => Seconds / 60.0;

    /// <summary>What must be added to a dial reading to take the equation of time off.</summary>
    public ReadingCorrection ToCorrection() => ReadingCorrection.FromMinutes(-Minutes);

    /// <summary>Makes an equation of time from seconds.</summary>
    public static EquationOfTime FromSeconds(double seconds) => new(seconds);

    /// <summary>Makes an equation of time from minutes.</summary>
    public static EquationOfTime FromMinutes(double minutes) => new(minutes * 60.0);

    /// <summary>Such as <c>+16.4 min</c>.</summary>
    public override string ToString() => Minutes.ToString("+0.0##;-0.0##;0.0", CultureInfo.InvariantCulture) + " min";
}
