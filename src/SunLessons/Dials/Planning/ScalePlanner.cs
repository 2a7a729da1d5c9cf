using System.Globalization;
using MathNet.Numerics.RootFinding;

namespace SunLessons.Dials.Planning;

/// <summary>
/// Which few latitude scales a dial should carry for a range of latitudes, so that the worst error anywhere in the range is as small as it can be.
/// </summary>
/// <remarks>
/// <para>Method: for an error allowed, the scale nearest to the equator is pushed poleward as far as the range's end allows, then its band as far as the
/// scale allows, and so on; the least error for which the count suffices is found by halving. That is the best choice because an error grows as
/// scale and place part (a test samples that).</para>
/// <para>With the style at the true latitude the worst error depends on nothing but the ratio of the two latitudes' sines, so scales belong at equal ratios of
/// sines. With the style at the scale's latitude the worst error depends on the DIFFERENCE of the two latitudes alone, as long as the Sun of six o'clock in
/// midsummer is read (4 tan 23.44° = 1.73 minutes to the degree): there equal spacing is the best to within 0.002 minutes. The two rules cross: from 25 to
/// 45 degrees 4 scales leave 7.4 minutes with the true style and 4.3 with the scale's, from 45 to 65 degrees 3.6 and 4.3.</para>
/// <para>Measured with the style at the true latitude against an independent reckoning printed to a tenth of a minute (25 to 65, 30 to 60 and 35 to 60
/// degrees, 3 to 8 scales, best and evenly spaced): equal to the tenth, and to the closed form 4 asin((q − 1)/(q + 1)) within 1e-6 minutes.</para>
/// </remarks>
public static class ScalePlanner
{
    // No pocket holds more; beyond it a wanted error is refused.
    private const int MostScales = 100;

    // Halvings of the error (12 hours to 1e-7 minutes) and of a border between scales (90 degrees to 1e-8).
    private const int Halvings = 34;

    /// <summary>The best plan for a count of scales.</summary>
    /// <param name="one">One end of the range.</param>
    /// <param name="other">The other end, in the same hemisphere, neither on the equator nor at a pole.</param>
    /// <param name="count">How many scales, 1 to 100.</param>
    /// <param name="style">To what the style is set in use.</param>
    /// <param name="leastSun">The least altitude of the Sun at which a reading counts; null for 5°.</param>
    /// <exception cref="ArgumentOutOfRangeException">A range that cannot be planned, or a count outside 1 to 100.</exception>
    public static ScalePlan Best(Latitude one, Latitude other, int count, StyleSet style, Altitude? leastSun = null)
    {
        var range = Range.Of(one, other, style, leastSun);
        CheckCount(count);
        if (range.Near == range.Far)
        {
            return new ScalePlan([range.Planned(range.Near, range.Near, range.Near)]);
        }

        double low = 0.0, high = range.Error(range.Near, range.Far);
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2.0;
            (low, high) = range.Cover(middle, count) is null ? (middle, high) : (low, middle);
        }

        return new ScalePlan(range.Cover(high, count)!);
    }

    /// <summary>The plan with the fewest scales whose worst error is not above the one wanted; the scales are then spread to make it as small as it can be.</summary>
    /// <param name="one">One end of the range.</param>
    /// <param name="other">The other end, in the same hemisphere, neither on the equator nor at a pole.</param>
    /// <param name="wantedMinutes">The worst error that may be left, minutes, above 0.</param>
    /// <param name="style">To what the style is set in use.</param>
    /// <param name="leastSun">The least altitude of the Sun at which a reading counts; null for 5°.</param>
    /// <exception cref="ArgumentOutOfRangeException">A range that cannot be planned, or an error so small that 100 scales do not reach it.</exception>
    public static ScalePlan ForWorst(Latitude one, Latitude other, double wantedMinutes, StyleSet style, Altitude? leastSun = null)
    {
        var range = Range.Of(one, other, style, leastSun);
        if (!(wantedMinutes > 0.0) || range.Cover(wantedMinutes, MostScales) is not { } cover)
        {
            throw new ArgumentOutOfRangeException(
                nameof(wantedMinutes),
                $"A worst error of {wantedMinutes.ToString("0.####", CultureInfo.InvariantCulture)} minutes is not above 0 or needs more than {MostScales} scales; allow more, such as 5 minutes, or a smaller range.");
        }

        return Best(one, other, cover.Count, style, leastSun);
    }

    /// <summary>
    /// What equal spacing leaves: the range in equal bands of latitude with a scale in the middle of each, each place using the scale that serves it best.
    /// </summary>
    /// <param name="one">One end of the range.</param>
    /// <param name="other">The other end, in the same hemisphere, neither on the equator nor at a pole.</param>
    /// <param name="count">How many scales, 1 to 100.</param>
    /// <param name="style">To what the style is set in use.</param>
    /// <param name="leastSun">The least altitude of the Sun at which a reading counts; null for 5°.</param>
    /// <exception cref="ArgumentOutOfRangeException">A range that cannot be planned, or a count outside 1 to 100.</exception>
    public static ScalePlan Even(Latitude one, Latitude other, int count, StyleSet style, Altitude? leastSun = null)
    {
        var range = Range.Of(one, other, style, leastSun);
        CheckCount(count);
        var width = (range.Far - range.Near) / count;
        return range.With([.. Enumerable.Range(0, count).Select(i => range.Near + (i + 0.5) * width)]);
    }

    /// <summary>What a given set of scales leaves, each place using the scale that serves it best.</summary>
    /// <param name="one">One end of the range.</param>
    /// <param name="other">The other end, in the same hemisphere, neither on the equator nor at a pole.</param>
    /// <param name="scales">The latitudes of the scales, one or more, of the range's hemisphere.</param>
    /// <param name="style">To what the style is set in use.</param>
    /// <param name="leastSun">The least altitude of the Sun at which a reading counts; null for 5°.</param>
    /// <exception cref="ArgumentException">A range that cannot be planned, no scale, or one of the other hemisphere.</exception>
    public static ScalePlan With(Latitude one, Latitude other, IEnumerable<Latitude> scales, StyleSet style, Altitude? leastSun = null)
    {
        ArgumentNullException.ThrowIfNull(scales);
        var range = Range.Of(one, other, style, leastSun);
        var given = scales.ToList();
        return given.Count > 0 && given.TrueForAll(scale => scale.Degrees != 0.0 && scale.IsSouthern == range.IsSouthern)
            ? range.With([.. given.Select(scale => Math.Abs(scale.Degrees)).Order()])
            : throw new ArgumentException(
                "Scales must be one or more, all in the range's hemisphere and none on the equator; name latitudes such as 30, 40 and 50 degrees.", nameof(scales));
    }

    private static void CheckCount(int count)
    {
        if (count is < 1 or > MostScales)
        {
            throw new ArgumentOutOfRangeException(nameof(count), $"A count of {count} scales is outside 1 to {MostScales}; give such as 4.");
        }
    }

    /// <summary>A range of latitudes without sign, with the rule by which errors are judged. Seasons mirror, so the south is planned as the north.</summary>
    private sealed record Range(double Near, double Far, bool IsSouthern, StyleSet Style, Altitude? LeastSun)
    {
        public static Range Of(Latitude one, Latitude other, StyleSet style, Altitude? leastSun)
        {
            var (a, b) = (Math.Abs(one.Degrees), Math.Abs(other.Degrees));
            if (one.IsSouthern != other.IsSouthern || a < 0.5 || b < 0.5 || a > 89.0 || b > 89.0)
            {
                throw new ArgumentOutOfRangeException(
                    nameof(one),
                    $"The range {one} to {other} is outside 0.5 to 89 degrees of one hemisphere; level dials fail at the equator, so plan each hemisphere by itself.");
            }

            var range = new Range(Math.Min(a, b), Math.Max(a, b), one.IsSouthern, style, leastSun);
            return ScaleError.WorstMinutes(one, one, style, leastSun) is null || ScaleError.WorstMinutes(other, other, style, leastSun) is null
                ? throw new ArgumentOutOfRangeException(
                    nameof(leastSun),
                    $"The Sun never stands {leastSun} high at one end of the range {one} to {other}; allow a lower Sun, such as 5 degrees.")
                : range;
        }

        public double Error(double scale, double place) =>
            ScaleError.WorstMinutes(Latitude.FromDegrees(scale), Latitude.FromDegrees(place), Style, LeastSun)!.Value;

        public PlannedScale Planned(double scale, double near, double far)
        {
            var sign = IsSouthern ? -1.0 : 1.0;
            return new PlannedScale(
                Latitude.FromDegrees(sign * scale),
                Latitude.FromDegrees(sign * near),
                Latitude.FromDegrees(sign * far),
                Math.Max(Error(scale, near), Error(scale, far)));
        }

        /// <summary>Bands that keep within an error, as long as each can be; null when a count of them does not reach the far end.</summary>
        public List<PlannedScale>? Cover(double allowed, int count)
        {
            var bands = new List<PlannedScale>();
            var start = Near;
            while (bands.Count < count)
            {
                var scale = Furthest(start, s => Error(s, start) - allowed);
                var end = Furthest(scale, place => Error(scale, place) - allowed);
                bands.Add(Planned(scale, start, end));
                if (end >= Far)
                {
                    return bands;
                }

                if (end <= start)
                {
                    return null;
                }

                start = end;
            }

            return null;
        }

        /// <summary>Given scales with the bands in which each serves best.</summary>
        public ScalePlan With(IReadOnlyList<double> scales)
        {
            var bands = new List<PlannedScale>();
            var start = Near;
            for (var i = 0; i < scales.Count; i++)
            {
                // Between two scales the border is where both err alike.
                var end = Far;
                if (i + 1 < scales.Count)
                {
                    var (low, high) = (scales[i], scales[i + 1]);
                    for (var step = 0; step < Halvings; step++)
                    {
                        var middle = (low + high) / 2.0;
                        (low, high) = Error(scales[i], middle) < Error(scales[i + 1], middle) ? (middle, high) : (low, middle);
                    }

                    end = Math.Clamp((low + high) / 2.0, Near, Far);
                }

                // A scale that serves no place of the range has no band, but there is always one left.
                if (end > start || (bands.Count == 0 && i + 1 == scales.Count))
                {
                    bands.Add(Planned(scales[i], start, end));
                    start = end;
                }
            }

            return new ScalePlan(bands);
        }

        /// <summary>How far towards the pole an excess that grows stays below nothing; at the start it is.</summary>
        private double Furthest(double from, Func<double, double> excess)
        {
            if (from >= Far || excess(Far) <= 0.0)
            {
                return Far;
            }

            // Within a billionth of a degree, some 3e-9 minutes.
            return Brent.TryFindRoot(excess, from, Far, 1e-9, 100, out var root) ? root : from;
        }
    }
}
