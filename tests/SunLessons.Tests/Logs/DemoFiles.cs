using System.Globalization;
using NodaTime;
using SunLessons.Dials;
using SunLessons.Logs;
using SunLessons.Magnetism;
using SunLessons.Places;
using SunLessons.Sun;

namespace SunLessons.Tests.Logs;

/// <summary>How the invented log and the invented list of datasets-demo were made, number for number.</summary>
internal static class DemoFiles
{
    public const double TwistDegrees = -2.5;
    public const double EastEdgeDegrees = 1.0;
    public const int MisreadLine = 17;
    public const int ListedYear = 1931;
    public const string SlippedPlace = "St. John's";

    private static readonly string[] Observers = ["Aroha", "Tama", "Isla", "Wiremu"];

    /// <summary>
    /// A dial made for Dunedin, twisted 2.5 degrees anticlockwise with its east edge 1 degree too high, read beside a sound clock; noise of some half a minute from a
    /// seeded generator; in one line the hour line next to the right one.
    /// </summary>
    public static string Log()
    {
        var place = Gazetteer.Towns.Single(p => p.Name == "Dunedin");
        var random = new Random(1852);
        var observations = new List<Observation>();
        foreach (var day in new[] { new LocalDate(2026, 3, 20), new LocalDate(2026, 5, 2), new LocalDate(2026, 6, 21), new LocalDate(2026, 9, 23), new LocalDate(2026, 12, 22) })
        {
            var minute = random.Next(60);
            foreach (var hour in new[] { 10, 11, 12, 13, 14, 15 })
            {
                var clock = day.At(new LocalTime(hour, minute));
                var sun = SolarEphemeris.At(SunInstant.FromInstant(place.Zone.Zone.AtStrictly(clock).ToInstant()));
                var hourAngle = sun.HourAngleAt(place.Point.Longitude);
                var fast = DialError.FastMinutes(
                    FlatDial.For(place.Point.Latitude), DialStance.FromDegrees(TwistDegrees, EastEdgeDegrees), place.Point.Latitude, hourAngle, sun.Declination)!.Value;
                var noise = random.NextDouble() + random.NextDouble() + random.NextDouble() + random.NextDouble() - 2.0;

                // Two lines stand over the readings in the file.
                var line = observations.Count + 3;
                var minutes = 720.0 + hourAngle.Angle.TimeMinutes + fast + noise + (line == MisreadLine ? 60.0 : 0.0);
                observations.Add(new Observation(
                    line, clock, DialTime.FromHours(Math.Round(minutes * 2.0) / 120.0), Observers[random.Next(4)], hour == 10 && day.Month == 5 ? "thin cloud, edge hard to see" : ""));
            }
        }

        return "# Invented readings of an invented school dial at Dunedin; nobody took them. Dial to half a minute, clock in New Zealand time. See README.md.\n" + new ObservationLog(observations);
    }

    /// <summary>The compass offsets of the eight towns in 1931 by the field model, rounded to a degree; at one of them the engraver took east for west.</summary>
    public static string List() =>
        "# An invented pocket dial's printed list of compass offsets; no such dial exists. See README.md.\nplace,latitude_degrees,longitude_degrees,compass_offset_degrees\n"
        + string.Concat(Gazetteer.Towns.Select(town =>
        {
            var offset = Math.Round(((NorthAnswer.Known)MagneticField.At(town.Point, (double)ListedYear)).Declination.Degrees);
            var east = offset > 0.0 != (town.Name == SlippedPlace);
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{town.Name},{town.Point.Latitude.Degrees:0.##},{town.Point.Longitude.Degrees:0.##},{Math.Abs(offset):0}{(offset == 0.0 ? "" : east ? " E" : " W")}\n");
        }));
}
