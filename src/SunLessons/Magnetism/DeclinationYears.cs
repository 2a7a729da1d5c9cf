namespace SunLessons.Magnetism;

/// <summary>The years in which a place had a given magnetic declination: what an engraved needle line of a known place can date to.</summary>
/// <remarks>
/// The models are searched at steps of a quarter of a year and every end of a span is halved down to a day; within a step the declination of a place bends by less than 0.001°
/// where a compass can be used. The models' own uncertainty is not in it: add it to <c>within</c>, or date a whole list with <c>Logs.InstrumentAge</c>, which does.
/// </remarks>
public static class DeclinationYears
{
    private const double StepYears = 0.25;
    private const double EndYears = 1.0 / 365.0;

    /// <summary>
    /// The spans of years, in order of time, in which the declination lay within a given angle of the one asked about; several where it went and came
    /// back, none where it never did so since 1900. With an angle of zero each span is a single moment at which the needle passed by; one at which it only touched and
    /// turned back may be missed.
    /// </summary>
    /// <param name="point">The place.</param>
    /// <param name="declination">The declination asked about, east positive.</param>
    /// <param name="within">How far from it still counts, 0° to 90°, such as half the step to which a line is engraved.</param>
    /// <exception cref="ArgumentOutOfRangeException">An angle outside that range, or a height outside −1 km to 850 km.</exception>
    public static IReadOnlyList<YearSpan> With(GeoPoint point, MagneticDeclination declination, Angle within)
    {
        if (!(within.Degrees >= 0.0 && within.Degrees <= 90.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(within), $"An angle of {within} is outside 0 to 90 degrees; give how far from the declination still counts, such as 0.5 degrees for a line engraved to a whole one.");
        }

        var models = MagneticModels.InUse;
        double Off(double year) => (((NorthAnswer.Known)models.At(point, year)).Declination.Angle - declination.Angle).AroundZero().Degrees;

        // Above zero outside; for a bare moment the sign of the difference itself tells on which side of it the needle is.
        var bare = within == Angle.Zero;
        double Outside(double year) => bare ? Off(year) : Math.Abs(Off(year)) - within.Degrees;

        var spans = new List<YearSpan>();
        double? from = !bare && Outside(models.FirstYear) <= 0.0 ? models.FirstYear : null;
        var (before, atBefore) = (models.FirstYear, Outside(models.FirstYear));
        if (bare && atBefore == 0.0)
        {
            spans.Add(new YearSpan(before, before));
        }

        var steps = (int)Math.Ceiling((models.LastYear - models.FirstYear) / StepYears);
        for (var k = 1; k <= steps; k++)
        {
            var year = Math.Min(models.FirstYear + k * StepYears, models.LastYear);
            var at = Outside(year);

            // Half a turn's jump from +180 to -180 is no passing.
            if (atBefore > 0.0 != at > 0.0 && Math.Abs(at - atBefore) < 180.0)
            {
                var end = Passing(before, year, atBefore > 0.0);
                if (bare)
                {
                    spans.Add(new YearSpan(end, end));
                }
                else if (from is { } began)
                {
                    spans.Add(new YearSpan(began, end));
                    from = null;
                }
                else
                {
                    from = end;
                }
            }

            (before, atBefore) = (year, at);
        }

        if (from is { } open)
        {
            spans.Add(new YearSpan(open, models.LastYear));
        }

        return spans;

        double Passing(double low, double high, bool lowOutside)
        {
            while (high - low > EndYears)
            {
                var middle = (low + high) / 2.0;
                (low, high) = Outside(middle) > 0.0 == lowOutside ? (middle, high) : (low, middle);
            }

            return (low + high) / 2.0;
        }
    }
}
