using SunLessons.Dials.Faces;

namespace SunLessons.Dials.Planning;

/// <summary>
/// The worst error of a level and true dial that uses a scale made for another latitude: over all hours with the Sun high enough, through a year.
/// </summary>
/// <remarks>
/// Sought with <see cref="DialError"/> at five declinations of the Sun from solstice to solstice and refined about the worst hour; against the day by day
/// search of the ranking of readings it agrees within 0.5 % and 0.02 minutes (the tests hold it to that). The sign is dropped: a scale errs one way before noon, the
/// other way after.
/// </remarks>
public static class ScaleError
{
    private const int Hours = 24;

    private static readonly double[] Declinations = [-1.0, -0.5, 0.0, 0.5, 1.0];

    /// <summary>The least geometric altitude of the Sun at which a reading counts unless another is named: 5°. Lower, the shadow is too long and too faint to read.</summary>
    public static Altitude LeastSun => Altitude.FromDegrees(5.0);

    /// <summary>The worst error, minutes without sign; null where the dial has no reading there at all.</summary>
    /// <param name="scale">The latitude that the scale was made for.</param>
    /// <param name="place">The latitude of the place.</param>
    /// <param name="style">To what the style is set.</param>
    /// <param name="leastSun">The least geometric altitude at which a reading counts; null for 5° (<see cref="LeastSun"/>).</param>
    public static double? WorstMinutes(Latitude scale, Latitude place, StyleSet style, Altitude? leastSun = null)
    {
        var dial = new FlatDial(scale, style == StyleSet.ForPlace ? place : scale);
        if (ForwardModel.ScaleFault(dial) is not null)
        {
            return null;
        }

        // A style at the true latitude throws its shadow along the hour planes of the true sky: the error depends on the hour alone, and the longest day holds every hour.
        double? worst = null;
        foreach (var part in style == StyleSet.ForPlace ? [place.IsSouthern ? -1.0 : 1.0] : Declinations)
        {
            var declination = SolarDeclination.FromAngle(part * LitHours.GreatestDeclination);
            if (LastHour(place, declination, leastSun ?? LeastSun) is { } last)
            {
                var here = WorstUpTo(last, h => Math.Abs(
                    DialError.FastMinutes(dial, DialStance.True, place, HourAngle.FromDegrees(h), declination) ?? 0.0));
                worst = Math.Max(worst ?? 0.0, here);
            }
        }

        return worst;
    }

    /// <summary>The greatest hour angle, degrees, at which the Sun stands as high as asked; null where it never does. The day is the same before noon.</summary>
    private static double? LastHour(Latitude place, SolarDeclination declination, Altitude least)
    {
        bool High(double h) => LocalDirection.FromHourAngle(HourAngle.FromDegrees(h), declination, place).Up >= least.Angle.Sin;
        if (!High(0.0))
        {
            return null;
        }

        // Midnight itself is left out: dial and Sun may then lie 12 hours either way of each other.
        if (High(179.999))
        {
            return 179.999;
        }

        // The altitude falls all the way from noon to midnight; 34 halvings leave a hundred millionth of a degree.
        var (low, high) = (0.0, 180.0);
        for (var i = 0; i < 34; i++)
        {
            var middle = (low + high) / 2.0;
            (low, high) = High(middle) ? (middle, high) : (low, middle);
        }

        return low;
    }

    private static double WorstUpTo(double last, Func<double, double> error)
    {
        var step = last / Hours;
        var (best, at) = (error(last), Hours);
        for (var i = 1; i < Hours; i++)
        {
            var here = error(i * step);
            if (here > best)
            {
                (best, at) = (here, i);
            }
        }

        if (at == Hours)
        {
            return best;
        }

        // Golden section about the worst sample: 24 steps leave a hundred thousandth of two samples' distance, and the error is flat there.
        const double Golden = 0.6180339887498949;
        var (low, high) = ((at - 1) * step, (at + 1) * step);
        var (left, right) = (high - Golden * (high - low), low + Golden * (high - low));
        var (atLeft, atRight) = (error(left), error(right));
        for (var i = 0; i < 24; i++)
        {
            if (atLeft > atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - Golden * (high - low);
                atLeft = error(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + Golden * (high - low);
                atRight = error(right);
            }
        }

        return Math.Max(best, Math.Max(atLeft, atRight));
    }
}
