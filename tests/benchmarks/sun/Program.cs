// Positions of the Sun a second: exact path, fast path, and two peers in the same run; or, with the word full, the fast path's errors over all years.
// Run: see README.md. Position here: declination and equation of time for given UT1 and TT - UT1.
using System.Diagnostics;
using System.Globalization;
using SunLessons;
using SunLessons.Sun;

if (args is ["full"])
{
    FullRun();
    return;
}

Timing.Machine("one thread; a position is declination and equation of time");
var table = SunTable.ForYears(1900, 2100);
var sink = 0.0;
var all = Instants();
var check = SunInstant.FromUt1(2461347.5, 69.2);
Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"check, 3 November 2026 0h UT1: exact {SolarEphemeris.At(check).Declination.Degrees:0.00000} degrees, {SolarEphemeris.At(check).EquationOfTime.Seconds:0.000} s; fast {table.At(check).Declination.Degrees:0.00000} degrees, {table.At(check).EquationOfTime.Seconds:0.000} s"));
Rate("exact path, SolarEphemeris.At", 200_000, i =>
{
    var sun = SolarEphemeris.At(all[i & 65535]);
    sink += sun.Declination.Radians + sun.EquationOfTime.Seconds;
});
RateOfTable("fast path, SunTable.At, all years in disorder", all);
RateOfTable("fast path, SunTable.At, one year in order", [.. Enumerable.Range(0, 65536).Select(i => SunInstant.FromUt1(2461041.5 + i * (365.0 / 65536.0), 69.2))]);
var build = Stopwatch.StartNew();
SunTable.ForYears(2026, 2026);
Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"building the table of one year: {build.Elapsed.TotalMilliseconds:0.0} ms"));
Timing.Peer("node", "peer.mjs");
Timing.Peer(OperatingSystem.IsWindows() ? "python" : "/usr/bin/python3", "peer.py");
Console.WriteLine(Timing.Load());
if (double.IsNaN(sink))
{
    Console.WriteLine("not a number");
}

// Instants of 1900 to 2100 in no order, the same in every run.
static SunInstant[] Instants()
{
    var random = new Random(1);
    return [.. Enumerable.Range(0, 65536).Select(_ => SunInstant.FromUt1(2415020.5 + 73414.0 * random.NextDouble(), 60.0))];
}

void Rate(string name, int count, Action<int> position) => Timing.Rate(name, count, () =>
{
    for (var i = 0; i < count; i++)
    {
        position(i);
    }
});

// Its own loop: a call through a delegate would cost as much as the position.
void RateOfTable(string name, SunInstant[] instants) => Timing.Rate(name, 20_000_000, () =>
{
    var sum = 0.0;
    for (var round = 0; round < 20_000_000 / 65536 + 1; round++)
    {
        foreach (ref readonly var instant in instants.AsSpan())
        {
            var sun = table.At(instant);
            sum += sun.Declination.Radians + sun.EquationOfTime.Seconds;
        }
    }

    sink += sum;
});

static void FullRun()
{
    var table = SunTable.ForYears(1900, 2100);
    double equation = 0.0, declination = 0.0, distance = 0.0, sky = 0.0;
    const int Count = 734_140;
    for (var i = 0; i < Count; i++)
    {
        // TT - UT1 steps through -10 to 250 s, so that it keeps no company with the date; the place goes round the world.
        var instant = SunInstant.FromUt1(2415020.5 + i / 10.0, -10.0 + i * 7 % 261);
        var (exact, fast) = (SolarEphemeris.At(instant), table.At(instant));
        equation = Math.Max(equation, Math.Abs(exact.EquationOfTime.Seconds - fast.EquationOfTime.Seconds));
        declination = Math.Max(declination, Math.Abs((exact.Declination.Angle - fast.Declination.Angle).ArcSeconds));
        distance = Math.Max(distance, Math.Abs(exact.DistanceAu - table.DistanceAu(instant)));
        var place = GeoPoint.FromDegrees(-90.0 + i % 181, -180.0 + i * 11 % 360);
        sky = Math.Max(sky, Apart(SunInSky.Of(exact, place), table.SkyAt(instant, place)));
    }

    Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{Count:#,##0} instants, every tenth of a day of 1900 to 2100; fast path less exact path at worst: equation of time {equation:0.00e0} s, declination {declination:0.00e0} arcseconds, direction in the sky {sky:0.00e0} arcseconds, distance {distance:0.00e0} au"));
}

static double Apart(SunInSky a, SunInSky b)
{
    static (double, double, double) Vector(SunInSky s) => (
        Math.Cos(s.Altitude.Radians) * Math.Cos(s.Azimuth.Radians), Math.Cos(s.Altitude.Radians) * Math.Sin(s.Azimuth.Radians), Math.Sin(s.Altitude.Radians));
    var (x, y, z) = Vector(a);
    var (u, v, w) = Vector(b);
    return Math.Sqrt(Math.Pow(x - u, 2) + Math.Pow(y - v, 2) + Math.Pow(z - w, 2)) * (648000.0 / Math.PI);
}
