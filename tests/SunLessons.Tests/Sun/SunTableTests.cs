using System.Globalization;
using SunLessons.Sun;

namespace SunLessons.Tests.Sun;

/// <summary>
/// The fast path against the exact one over 1900 to 2100. The full run behind the figures in <see cref="SunTable"/>'s doc, every tenth of a day, is
/// <c>dotnet run --project tests/benchmarks/sun -- full</c>; its print stands beside that program.
/// </summary>
public sealed class SunTableTests
{
    private static readonly SunTable AllYears = SunTable.ForYears(1900, 2100);

    private static readonly double FirstJulianDate = 2415020.5;
    private static readonly double DaysInAll = 73414.0;

    [Fact]
    public void TheFastPathIsTheExactOneWithinTheStatedErrors()
    {
        var seed = Environment.TickCount;
        var random = new Random(seed);
        double equation = 0.0, declination = 0.0, sky = 0.0, distance = 0.0;
        for (var i = 0; i < 5_000; i++)
        {
            var instant = SunInstant.FromUt1(FirstJulianDate + DaysInAll * random.NextDouble(), -10.0 + 260.0 * random.NextDouble());
            var place = GeoPoint.FromDegrees(-90.0 + 180.0 * random.NextDouble(), -180.0 + 360.0 * random.NextDouble(), 3000.0 * random.NextDouble());
            var (exact, fast) = (SolarEphemeris.At(instant), AllYears.At(instant));
            equation = Math.Max(equation, Math.Abs(fast.EquationOfTime.Seconds - exact.EquationOfTime.Seconds));
            declination = Math.Max(declination, Math.Abs((fast.Declination.Angle - exact.Declination.Angle).ArcSeconds));
            distance = Math.Max(distance, Math.Abs(AllYears.DistanceAu(instant) - exact.DistanceAu));
            sky = Math.Max(sky, Apart(SunInSky.Of(exact, place), AllYears.SkyAt(instant, place)));
        }

        // The full run's figures, rounded up by a fifth at most, since a sample may fall between its instants.
        var found = string.Create(CultureInfo.InvariantCulture, $"seed {seed}: equation of time {equation:0.0e0} s, declination {declination:0.0e0}\", sky {sky:0.0e0}\", distance {distance:0.0e0} au");
        Assert.True(equation < 0.000038 && declination < 0.00054 && sky < 0.00065 && distance < 6e-10, found);
    }

    [Fact]
    public void TheHourAngleIsTheExactOne()
    {
        var seed = Environment.TickCount;
        var random = new Random(seed);
        for (var i = 0; i < 1_000; i++)
        {
            var instant = SunInstant.FromUt1(FirstJulianDate + DaysInAll * random.NextDouble(), 60.0);
            var longitude = Longitude.FromDegrees(-180.0 + 360.0 * random.NextDouble());
            var difference = Math.IEEERemainder(SolarEphemeris.At(instant).HourAngleAt(longitude).Degrees - AllYears.At(instant).HourAngleAt(longitude).Degrees, 360.0);

            // 0.000038 s of the equation of time and as much again for UT1 as a Julian date in a double (0.00004 s), at 240 s to the degree.
            Assert.True(Math.Abs(difference * 240.0) < 0.00008, string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {difference} degrees at {instant.Ut1JulianDate}"));
        }
    }

    [Fact]
    public void ATableOfOneYearReachesADayBeyondItsEnds()
    {
        var table = SunTable.ForYears(2026, 2026);

        // 2461041.5 is 0h UT1 on 1 January 2026 (the exact path's own calendar in other tests), 2461406.5 that of 2027.
        foreach (var date in new[] { 2461040.5, 2461041.5, 2461200.25, 2461406.5, 2461407.5 })
        {
            var instant = SunInstant.FromUt1(date, 69.2);
            Assert.Equal(SolarEphemeris.At(instant).EquationOfTime.Seconds, table.At(instant).EquationOfTime.Seconds, 0.000038);
        }
    }

    [Theory]
    [InlineData(2461000.5)]
    [InlineData(2461450.5)]
    public void OutsideItsYearsTheTableDoesNotAnswer(double julianDate)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => SunTable.ForYears(2026, 2026).At(SunInstant.FromUt1(julianDate, 69.2)));
        Assert.StartsWith(
            string.Create(CultureInfo.InvariantCulture, $"Julian date {julianDate} lies outside the years 2026 to 2026 of this table. Make a table of its year, by SunTable.ForYears."),
            error.Message,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1899, 2000)]
    [InlineData(2000, 2101)]
    [InlineData(2001, 2000)]
    public void YearsOutsideTheCheckedOnesGetOneSentence(int first, int last)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => SunTable.ForYears(first, last));
        Assert.StartsWith(
            string.Create(CultureInfo.InvariantCulture, $"Years {first} to {last} are outside 1900 to 2100 or the wrong way round. Give the earlier year first, inside that range."),
            error.Message,
            StringComparison.Ordinal);
    }

    // The angle between two directions, arcseconds: chord of two unit vectors, which loses nothing where they nearly agree.
    private static double Apart(SunInSky a, SunInSky b)
    {
        var (xa, ya, za) = Vector(a);
        var (xb, yb, zb) = Vector(b);
        return Math.Sqrt(Math.Pow(xa - xb, 2) + Math.Pow(ya - yb, 2) + Math.Pow(za - zb, 2)) * (648000.0 / Math.PI);
    }

    private static (double North, double East, double Up) Vector(SunInSky sun)
    {
        var level = Math.Cos(sun.Altitude.Radians);
        return (level * Math.Cos(sun.Azimuth.Radians), level * Math.Sin(sun.Azimuth.Radians), Math.Sin(sun.Altitude.Radians));
    }
}
