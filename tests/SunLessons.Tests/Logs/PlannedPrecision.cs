using NodaTime;
using SunLessons.Dials;
using SunLessons.Logs;
using SunLessons.Places;

namespace SunLessons.Tests.Logs;

/// <summary>
/// Against the project's own table of precisions (an earlier, separate computation from the small-fault law): Vigo, one minute of noise, readings at 1, 2 and 3 hours either side of noon; the
/// clock, the style and the hour lines trusted, so that twist, east tip and a north tip (the same as a wrong latitude) are left.
/// </summary>
public class PlannedPrecision
{
    private static readonly GeoPoint Vigo = Gazetteer.Towns.Single(p => p.Name == "Vigo").Point;
    private static readonly double[] Hours = [-3, -2, -1, 1, 2, 3];

    private static readonly FaultPrior[] Trusted =
    [
        new(Fault.ClockSlow, 0, 0, "trusted"), new(Fault.StyleNorthward, 0, 0, "trusted"), new(Fault.LinesNorthward, 0, 0, "trusted"),
    ];

    private static FaultPrecision Of(IReadOnlyList<FaultPrior> trusted, params LocalDate[] days) => LogPlanner.Precision(
        Vigo.Latitude, FlatDial.For(Vigo.Latitude), [.. days.SelectMany(day => LogPlanner.Session(Vigo, day, Hours))], 1.0, trusted);

    private static LocalDate Day(int month, int day) => new(2026, month, day);

    [Theory]
    [InlineData("20 Mar + 1 May", 0.51, 0.37, 0.72)]
    [InlineData("20 Mar + 21 Jun", 0.34, 0.21, 0.45)]
    [InlineData("four seasons", 0.15, 0.14, 0.32)]
    [InlineData("21 Jun", 2.2, 0.9, 0.45)]
    public void Sessions_tell_what_the_table_says(string which, double twist, double east, double north)
    {
        LocalDate[] days = which switch
        {
            "21 Jun" => [Day(6, 21)],
            "20 Mar + 1 May" => [Day(3, 20), Day(5, 1)],
            "20 Mar + 21 Jun" => [Day(3, 20), Day(6, 21)],
            _ => [Day(3, 20), Day(6, 21), Day(9, 23), Day(12, 22)],
        };
        var precision = Of(Trusted, days);

        // Half of the last printed digit, and a tenth of it more for a day's choice of solstice and equinox.
        var digit = which == "21 Jun" ? 0.055 : 0.0055;
        Assert.Equal(twist, precision[Fault.TwistClockwise], digit);
        Assert.Equal(east, precision[Fault.EastEdgeRaised], digit);
        Assert.Equal(north, precision[Fault.NorthEdgeRaised], 0.0055);
    }

    [Fact]
    public void An_equinox_day_alone_is_useless_and_June_beats_May_as_the_second_session()
    {
        var alone = Of(Trusted, Day(3, 20));

        // The table: 227, 206, 393 degrees. These hang on how far the Sun strays from the equator within the day, so on every second of the equinox: a per cent.
        Assert.Equal(227, alone[Fault.TwistClockwise], 2.3);
        Assert.Equal(206, alone[Fault.EastEdgeRaised], 2.1);
        Assert.Equal(393, alone[Fault.NorthEdgeRaised], 4.0);
        Assert.True(Of(Trusted, Day(3, 20), Day(6, 21))[Fault.TwistClockwise] < Of(Trusted, Day(3, 20), Day(5, 1))[Fault.TwistClockwise]);

        // And December beats June for the twist: 0.24.
        Assert.Equal(0.24, Of(Trusted, Day(3, 20), Day(12, 22))[Fault.TwistClockwise], 0.0055);
    }

    [Fact]
    public void Of_six_faults_four_combinations_can_be_told_and_two_directions_stay_open()
    {
        LocalDate[] year = [Day(3, 20), Day(6, 21), Day(9, 23), Day(12, 22)];
        var nothing = Of([], year);
        Assert.All(Enum.GetValues<Fault>(), fault => Assert.True(double.IsInfinity(nothing[fault])));
        Assert.All(Enum.GetValues<Combination>(), c => Assert.InRange(nothing[c], 0.01, 1.0));

        // A trusted clock opens the turn about the pole, not the tip north to south; a measured style the other way round.
        var clock = Of([Trusted[0]], year);
        Assert.InRange(clock[Fault.TwistClockwise], 0.1, 1.0);
        Assert.InRange(clock[Fault.EastEdgeRaised], 0.1, 1.0);
        Assert.True(double.IsInfinity(clock[Fault.NorthEdgeRaised]));
        var style = Of([new FaultPrior(Fault.StyleNorthward, 0, 0.3, "protractor")], year);
        Assert.True(double.IsInfinity(style[Fault.TwistClockwise]));
        Assert.InRange(style[Fault.NorthEdgeRaised], 0.3, 1.0);
        Assert.InRange(style[Fault.LinesNorthward], 0.3, 1.0);
        Assert.Equal(0.3, style[Fault.StyleNorthward], 1e-6);
    }

    [Fact]
    public void The_best_next_reading_after_an_equinox_is_near_a_solstice()
    {
        var place = Gazetteer.Towns.Single(p => p.Name == "Vigo");
        var next = LogPlanner.BestNext(place, null, LogPlanner.Session(Vigo, Day(3, 20), Hours), 1.0, Day(3, 21))!;
        Assert.True(next.Clock.Month is 6 or 12, next.Sentence);
        Assert.True(next.StandardUncertaintyAfter < 0.1 * next.StandardUncertaintyBefore, next.Sentence);

        // In the polar night there is nothing to read.
        var tromso = Gazetteer.Towns.Single(p => p.Name.StartsWith("Troms", StringComparison.Ordinal));
        Assert.Null(LogPlanner.BestNext(tromso, null, [], 1.0, Day(12, 1), 30));
    }
}
