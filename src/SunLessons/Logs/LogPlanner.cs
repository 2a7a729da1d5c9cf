using System.Globalization;
using MathNet.Numerics.LinearAlgebra;
using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.Logs;

/// <summary>What readings will tell before they are taken, and which reading would tell most.</summary>
public static class LogPlanner
{
    // Lower than this the air and a blurred shadow spoil a reading; the height from which the reading budget's own figures were computed.
    private const double LowestSunDegrees = 10.0;

    // A direction of which nothing is known is spread evenly over half a turn either way: 180°/√3.
    private static readonly double NothingKnownMinutes = 180.0 / Math.Sqrt(3.0) * FaultModel.MinutesPerDegree;

    /// <summary>The moments of one day at hours from solar noon, as far as the Sun is up then.</summary>
    /// <param name="place">Where the dial stands.</param>
    /// <param name="date">The day, by the Sun: its solar noon is the one nearest to 12:00 mean time of the place's own longitude.</param>
    /// <param name="hoursFromNoon">Hours after solar noon, before it negative.</param>
    public static IReadOnlyList<LightMoment> Session(GeoPoint place, LocalDate date, params IReadOnlyList<double> hoursFromNoon)
    {
        ArgumentNullException.ThrowIfNull(hoursFromNoon);
        return [.. hoursFromNoon.Select(hours => At(place, date, hours).Moment).Where(m => Altitude(place, m) > 0.0)];
    }

    /// <summary>How well readings at given moments would tell faults and combinations.</summary>
    /// <param name="place">The latitude of the place.</param>
    /// <param name="dial">The dial's design.</param>
    /// <param name="moments">When it is read.</param>
    /// <param name="readingStandardUncertaintyMinutes">Standard uncertainty of one reading, minutes, above 0.</param>
    /// <param name="measured">Independent measurements of single faults.</param>
    public static FaultPrecision Precision(
        Latitude place,
        FlatDial dial,
        IReadOnlyList<LightMoment> moments,
        double readingStandardUncertaintyMinutes,
        IReadOnlyList<FaultPrior>? measured = null)
    {
        ArgumentNullException.ThrowIfNull(moments);
        var model = new FaultModel(dial, DialStance.True, place);
        var identity = Matrix<double>.Build.DenseIdentity(FaultModel.Faults);
        return new FaultPrecision(
            Search(model, moments, identity, readingStandardUncertaintyMinutes, measured ?? []),
            Search(model, moments, model.FaultsOfCombinations(), readingStandardUncertaintyMinutes, []));
    }

    /// <summary>The best single next reading: the date and hour that make the worst known of the four combinations best known.</summary>
    /// <param name="place">Where the dial stands.</param>
    /// <param name="dial">The dial's design; null for one made for the place.</param>
    /// <param name="done">The readings there are.</param>
    /// <param name="readingStandardUncertaintyMinutes">Standard uncertainty of one reading, minutes, above 0.</param>
    /// <param name="from">First day that is possible.</param>
    /// <param name="days">How many days to look at, 1 to 366.</param>
    /// <exception cref="ArgumentOutOfRangeException">Days outside 1 to 366.</exception>
    /// <returns>Null when the Sun does not come 10 degrees high in that time.</returns>
    public static NextObservation? BestNext(
        Place place, FlatDial? dial, IReadOnlyList<LightMoment> done, double readingStandardUncertaintyMinutes, LocalDate from, int days = 366)
    {
        ArgumentNullException.ThrowIfNull(place);
        ArgumentNullException.ThrowIfNull(done);
        if (days is < 1 or > 366)
        {
            throw new ArgumentOutOfRangeException(nameof(days), $"{days.ToString(CultureInfo.InvariantCulture)} days are outside 1 to 366; write 366 for a whole year.");
        }

        var latitude = place.Point.Latitude;
        var model = new FaultModel(dial ?? FlatDial.For(latitude), DialStance.True, latitude);
        var map = model.FaultsOfCombinations();
        var covariance = Covariance(model, map, done, readingStandardUncertaintyMinutes);
        var goal = Enum.GetValues<Combination>().MaxBy(which => covariance[(int)which, (int)which]);
        var k = (int)goal;
        var before = covariance[k, k];
        (double After, LocalDate Date, double Hours)? best = null;
        for (var day = 0; day < days; day++)
        {
            var date = from.PlusDays(day);
            for (var hours = -8.0; hours <= 8.0; hours += 0.5)
            {
                var moment = At(place.Point, date, hours).Moment;
                if (Altitude(place.Point, moment) < LowestSunDegrees || Row(model, map, moment) is not { } row)
                {
                    continue;
                }

                // One more reading takes (C g)² / (u² + gᵀ C g) off the variance.
                var moved = covariance * row;
                var after = before - moved[k] * moved[k] / (readingStandardUncertaintyMinutes * readingStandardUncertaintyMinutes + row.DotProduct(moved));
                if (best is null || after < best.Value.After)
                {
                    best = (after, date, hours);
                }
            }
        }

        if (best is not { } found)
        {
            return null;
        }

        var unit = goal == Combination.Constant ? 1.0 : FaultModel.MinutesPerDegree;
        var (_, instant) = At(place.Point, found.Date, found.Hours);
        return new NextObservation(
            place.Zone.ClockAt(instant), HourAngle.FromHours(found.Hours), goal, Math.Sqrt(before) / unit, Math.Sqrt(Math.Max(0.0, found.After)) / unit);
    }

    private static Matrix<double> Covariance(FaultModel model, Matrix<double> map, IReadOnlyList<LightMoment> done, double u)
    {
        var information = Matrix<double>.Build.DenseIdentity(FaultModel.Combinations) / (NothingKnownMinutes * NothingKnownMinutes);
        foreach (var moment in done)
        {
            if (Row(model, map, moment) is { } row)
            {
                information += row.OuterProduct(row) / (u * u);
            }
        }

        return information.Inverse();
    }

    private static Vector<double>? Row(FaultModel model, Matrix<double> map, LightMoment moment) =>
        model.Slope(Vector<double>.Build.Dense(FaultModel.Faults), moment) is { } slope ? map.TransposeThisAndMultiply(slope) : null;

    private static FaultSearch Search(
        FaultModel model, IReadOnlyList<LightMoment> moments, Matrix<double> map, double scatter, IReadOnlyList<FaultPrior> measured)
    {
        // The readings that this very dial would give: nothing is left, so nothing moves.
        var known = Vector<double>.Build.Dense(FaultModel.Faults);
        foreach (var prior in measured)
        {
            known[(int)prior.Fault] = prior.Value * (prior.Fault == Fault.ClockSlow ? 1.0 : FaultModel.MinutesPerDegree);
        }

        var lit = moments.Where(m => model.Fast(known, m) is not null).ToArray();
        var search = new FaultSearch(
            model, lit, [.. lit.Select(m => model.Fast(known, m)!.Value)], map, measured);
        search.Run([.. Enumerable.Repeat(1.0, lit.Length)], scatter);
        return search;
    }

    private static (LightMoment Moment, Instant Instant) At(GeoPoint place, LocalDate date, double hours)
    {
        var t = LocalMeanTime.InstantOf(place.Longitude, date.At(LocalTime.Noon)) + Duration.FromHours(hours);

        // The equation of time moves by half a minute a day at most: a second round leaves less than a millisecond.
        for (var round = 0; round < 2; round++)
        {
            t += Duration.FromHours((HourAngle.FromHours(hours).Angle - ApparentDay.HourAngleAt(place, t).Angle).AroundZero().Degrees / 15.0);
        }

        return (new LightMoment(HourAngle.FromHours(hours), SunNow.At(t).Declination), t);
    }

    private static double Altitude(GeoPoint place, LightMoment moment) =>
        LocalDirection.FromHourAngle(moment.HourAngle, moment.Declination, place.Latitude).Altitude.Degrees;
}
