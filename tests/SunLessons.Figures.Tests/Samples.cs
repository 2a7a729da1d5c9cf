namespace SunLessons.Figures.Tests;

/// <summary>Figures of the kinds that lessons show. All numbers are invented or from the simplest textbook formulas: only the drawing is tested.</summary>
internal static class Samples
{
    private static readonly double[] Days = [.. Enumerable.Range(0, 74).Select(i => 1.0 + 5 * i).Append(365.0)];

    // A double wave with the size and the seasons of the equation of time; invented coefficients, only for its shape.
    private static double Wave(double day) => 7.5 * Math.Sin(2 * Math.PI * (day - 3) / 365) + 9.9 * Math.Sin(4 * Math.PI * (day - 80) / 365);

    public static IReadOnlyDictionary<string, Figure> All { get; } = new Dictionary<string, Figure>
    {
        ["year-of-four-towns"] = Figure.Titled("When the Sun stands highest, by the clock")
            .AcrossYear()
            .UpClock("Clock time of noon")
            .Line("Vigo", Days, Days.Select(d => 13.58 + Wave(d) / 60))
            .Line("Ushuaia", Days, Days.Select(d => 13.55 + Wave(d) / 60))
            .Line("Nairobi", Days, Days.Select(d => 12.54 + Wave(d) / 60))
            .Line("St. John's", Days, Days.Select(d => 12.01 + Wave(d) / 60))
            .MarkUp(12, "12 o'clock"),
        ["one-day"] = Figure.Titled("Error of a dial turned 2.0° clockwise")
            .AcrossClock("Dial time", 6, 18)
            .Up("Dial minus truth", "min", -12, 4)
            .Curve("error", 6, 18, h => -5.4 + 3.1 * Math.Cos((h - 12) * Math.PI / 12), strong: true)
            .Point("10:00", 10, -5.4 + 3.1 * Math.Cos(2 * Math.PI / 12), Ink.Vermilion, MarkerShape.Diamond)
            .MarkAcross(12, "noon")
            .Says("At 10:00 the dial shows 2.7 min too little."),
        ["plate"] = Plate(),
        ["fan"] = Fan(),
        ["eight-towns"] = Figure.Titled("Longitude step of eight towns")
            .AcrossNames("Town", ["Tromso", "Vigo", "Kathmandu", "Nairobi", "Darwin", "Dunedin", "Ushuaia", "St. John's"])
            .Up("Add to the dial", "min")
            .Bars("longitude step", Enumerable.Range(0, 8).Select(i => (double)i), [-15.8, 94.9, 3.7, 32.7, 46.6, 38.0, 93.2, 0.8], Ink.Blue),
        ["two-runs-of-bars"] = Figure.Titled("Worst error with three and with six scales")
            .AcrossNames("Range of latitudes", ["25° to 65°", "30° to 60°"])
            .Up("Worst error", "min")
            .Bars("three scales", [0, 1], [14.6, 10.5], label: "three scales")
            .Bars("six scales", [0, 1], [7.3, 5.2], Ink.Blue, label: "six scales"),
        ["day-length"] = Figure.Titled("Hours of daylight")
            .AcrossYear()
            .Up("Daylight", "h", 0, 24)
            .Area("daylight at 42° N", Days, Days.Select(d => 12.1 + 3 * Math.Sin(2 * Math.PI * (d - 80) / 365)), Ink.Green),
        ["gap-and-clipping"] = Figure.Titled("tan: gaps and lines that leave the frame")
            .Across("angle", "°", -90, 270)
            .Up("tangent", "", -3, 3)
            .Curve("tan", -90, 270, x => Math.Abs(Math.Cos(x * Math.PI / 180)) < 0.02 ? double.NaN : Math.Tan(x * Math.PI / 180), 361)
            .Points("seen", [10, 45, 80], [0.18, 1.0, 5.67], Ink.Vermilion)
            .Note(180, 0, "half a turn"),
        ["long-words"] = Figure.Titled("A heading so long that it has to be broken into two lines because it tells the whole story of the figure")
            .Across("Sun's distance from the horizon, refraction included", "°", 0, 90)
            .Up("Length of the shadow of a pole of one metre", "m", 0, 6)
            .Curve("without air", 9.5, 90, a => 1 / Math.Tan(a * Math.PI / 180))
            .Curve("with air bending the light", 9.5, 90, a => 0.05 + 1 / Math.Tan(a * Math.PI / 180))
            .Curve("half a degree lower", 9.5, 90, a => 0.1 + 1 / Math.Tan((a - 0.5) * Math.PI / 180)),
        ["nothing"] = Figure.Titled("Nothing to see").Across("hour", "h").Up("height", "°"),
    };

    private static Figure Plate()
    {
        var latitude = 42.24 * Math.PI / 180;
        var x = new List<double>();
        var y = new List<double>();
        var figure = Figure.Titled("Hour lines of a flat dial for 42.24° N").WithoutAxes().SameScale()
            .Across("east", "mm").Up("north", "mm");
        var edge = Enumerable.Range(0, 73).Select(i => i * 5 * Math.PI / 180).ToArray();
        figure = figure.Shape("plate", edge.Select(a => 100 * Math.Sin(a)), edge.Select(a => 100 * Math.Cos(a)));
        for (var hour = 6; hour <= 18; hour++)
        {
            var h = (hour - 12) * 15 * Math.PI / 180;
            var angle = Math.Atan2(Math.Sin(latitude) * Math.Sin(h), Math.Cos(h));
            x.AddRange([0, 80 * Math.Sin(angle), double.NaN]);
            y.AddRange([0, 80 * Math.Cos(angle), double.NaN]);
            figure = figure.Numeral(90 * Math.Sin(angle), 90 * Math.Cos(angle), hour.ToString(System.Globalization.CultureInfo.InvariantCulture));
        }

        return figure.Line("hour lines", x, y, label: "").Point("foot of the style", 0, 0, Ink.Vermilion).Note(0, -60, "south");
    }

    private static Figure Fan()
    {
        var sun = new[] { 57.5, 90.0, 122.5 };
        var names = new[] { "21 June", "20 March", "22 December" };
        var figure = Figure.Titled("Where the Sun rises at 42° N").SameScale()
            .Across("East of the stick", "m", -0.2, 1.4).Up("North of the stick", "m", -0.8, 0.8);
        for (var i = 0; i < 3; i++)
        {
            var a = sun[i] * Math.PI / 180;
            figure = figure.Line(names[i], [0, Math.Sin(a)], [0, Math.Cos(a)], marker: (MarkerShape)(i + 1));
        }

        return figure.Numeral(0, 0.7, "N").Numeral(1.3, 0, "E");
    }
}
