namespace SunLessons.Cells.Checks;

/// <summary>What kind of number a question asks for, and how a learner may write it.</summary>
internal enum AnswerKind
{
    Plain,
    Time,
    Clock,
    Angle,
    Latitude,
    Longitude,
    Length,
    Days,
}

/// <summary>A unit that a question may ask for.</summary>
/// <param name="Symbol">As written in a lesson's code and after a number.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Size">The unit in the base of its kind: seconds of time, degrees, millimetres.</param>
/// <param name="Asked">How a sentence names it, such as <c>minutes of time</c>.</param>
/// <param name="Example">An answer that would be read.</param>
/// <param name="Turn">After how many units it comes round again; 0 for never.</param>
internal sealed record AnswerUnit(string Symbol, AnswerKind Kind, double Size, string Asked, string Example, double Turn = 0)
{
    private static readonly AnswerUnit[] Known =
    [
        new("", AnswerKind.Plain, 1, "a number", "1.42"),
        new("s", AnswerKind.Time, 1, "seconds of time", "12.5 s"),
        new("min", AnswerKind.Time, 60, "minutes of time", "12.5 min"),
        new("h", AnswerKind.Time, 3600, "hours", "1.5 h"),
        new("clock", AnswerKind.Clock, 3600, "a clock time", "13:18", 24),
        new("°", AnswerKind.Angle, 1, "degrees", "33.5°"),
        new("bearing", AnswerKind.Angle, 1, "degrees from north through east", "122.5°", 360),
        new("latitude", AnswerKind.Latitude, 1, "a latitude", "42.24 N"),
        new("longitude", AnswerKind.Longitude, 1, "a longitude", "8.72 W"),
        new("mm", AnswerKind.Length, 1, "millimetres", "23.5 mm"),
        new("cm", AnswerKind.Length, 10, "centimetres", "23.5 cm"),
        new("m", AnswerKind.Length, 1000, "metres", "1.42 m"),
        new("km", AnswerKind.Length, 1_000_000, "kilometres", "111 km"),
        new("days", AnswerKind.Days, 1, "days", "12 days"),
    ];

    /// <summary><see cref="Asked"/> in the language of the lesson.</summary>
    public string AskedNow => Translated(Asked);

    /// <summary><see cref="Example"/> as the language of the lesson writes numbers.</summary>
    public string ExampleNow => Numbered(Translated(Example));

    public static AnswerUnit Of(string symbol) => Array.Find(Known, u => u.Symbol == symbol)
        ?? throw new ArgumentException($"Unit '{symbol}' is not one that answers are read in. Write one of {string.Join(", ", Known.Where(u => u.Symbol.Length > 0).Select(u => u.Symbol))}, or an empty text for a plain number.");

    /// <summary>A tolerance as an author gives it, in this unit: a clock time is kept in hours, but nobody thinks of half a minute as 0.0083 h.</summary>
    public double Tolerance(double given) => Kind == AnswerKind.Clock ? given / 60 : given;

    /// <summary>How far a value lies from another, the short way round where the unit comes round.</summary>
    public double Between(double a, double b)
    {
        var difference = Math.Abs(a - b);
        return Turn > 0 ? Math.Min(difference % Turn, Turn - difference % Turn) : difference;
    }
}
