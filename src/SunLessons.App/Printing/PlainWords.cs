using System.Globalization;
using NodaTime;
using NodaTime.Text;
using SunLessons.Places;

namespace SunLessons.App.Printing;

/// <summary>Amounts, dates and places as the verbs print them.</summary>
internal static class PlainWords
{
    private static readonly LocalDatePattern DatePattern = LocalDatePattern.CreateWithInvariantCulture("d MMMM uuuu");

    /// <summary>Such as <c>21 Jun</c>.</summary>
    public static string DayAndMonth(LocalDate date) => date.ToString("d MMM", CultureInfo.InvariantCulture);

    public static string Date(LocalDate date) => DatePattern.Format(date);

    /// <summary>Such as <c>Vigo, 42.24° N 8.72° W</c>, coordinates to 0.0001° (10 m).</summary>
    public static string Place(Place place) => $"{place.Name}, {Coordinates(place.Point)}";

    public static string Coordinates(GeoPoint point) =>
        $"{Latitude(point.Latitude)} {Number(Math.Abs(point.Longitude.Degrees), "0.####")}° {(point.Longitude.Degrees < 0.0 ? "W" : "E")}";

    public static string Latitude(Latitude latitude) => $"{Number(Math.Abs(latitude.Degrees), "0.####")}° {(latitude.IsSouthern ? "S" : "N")}";

    public static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    /// <summary>With its sign, plus included; a zero has none.</summary>
    public static string Signed(double value, string decimals) => value.ToString($"+{decimals};-{decimals};{decimals}", CultureInfo.InvariantCulture);

    /// <summary>Hours, minutes and seconds to the nearest second.</summary>
    public static string Seconds(LocalDateTime time) =>
        time.PlusNanoseconds(500_000_000).ToString("HH:mm:ss", CultureInfo.InvariantCulture);

    /// <summary>Hours and minutes to the nearest minute.</summary>
    public static string Minutes(LocalDateTime time) => time.PlusSeconds(30).ToString("HH:mm", CultureInfo.InvariantCulture);
}
