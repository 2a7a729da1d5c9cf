using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Logs;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.Tests.Logs;

/// <summary>Slips in how a log was kept are supposed aloud, never corrected silently.</summary>
public class SlipsInTheBook
{
    private static readonly Place Vigo = Gazetteer.Towns.Single(p => p.Name == "Vigo");
    private static readonly Place Kathmandu = Gazetteer.Towns.Single(p => p.Name == "Kathmandu");

    /// <summary>Six readings on a day of each month but January, of a dial twisted by 2 degrees, as a faithful observer would write them.</summary>
    private static List<(Instant Instant, Observation Faithful)> Book(Place place, DialStance? stance = null)
    {
        var book = new List<(Instant, Observation)>();
        for (var month = 2; month <= 12; month++)
        {
            foreach (var hour in new[] { 10, 11, 13, 14, 15, 16 })
            {
                var instant = place.Zone.Zone.AtStrictly(new LocalDateTime(2026, month, 11, hour, 20)).ToInstant();
                var shows = (DialReading.Shows)ForwardModel.Read(
                    FlatDial.For(place.Point.Latitude), stance ?? DialStance.FromDegrees(2.0), place.Point.Latitude, ApparentDay.HourAngleAt(place.Point, instant), SunNow.At(instant).Declination);
                book.Add((instant, new Observation(book.Count + 2, place.Zone.ClockAt(instant), shows.Time, "", "")));
            }
        }

        return book;
    }

    private static DialTime Later(DialTime time, double minutes) => DialTime.FromHours(time.Hours + minutes / 60.0);

    [Theory]
    [InlineData(LogSlipKind.DaylightTimeForgotten, "If the clock was not put forward for daylight time, ")]
    [InlineData(LogSlipKind.DaylightTimeAddedTwice, "If the clock stood an hour ahead while no daylight time was in force, ")]
    [InlineData(LogSlipKind.ClockInUniversalTime, "If the clock column holds universal time, ")]
    [InlineData(LogSlipKind.LongitudeSignLost, "If east and west were exchanged in the place's longitude, ")]
    [InlineData(LogSlipKind.DateCorrectedAlready, "If the dial column holds readings that were corrected for the date already, ")]
    [InlineData(LogSlipKind.DateCorrectedWrongWay, "If the dial column holds readings that were corrected for the date with the wrong sign, ")]
    [InlineData(LogSlipKind.CorrectedToTheClock, "If the dial column holds the time by the clock, ")]
    [InlineData(LogSlipKind.MorningForAfternoon, "If morning and afternoon were exchanged or hours after noon written 1 to 11, ")]
    public void Each_slip_is_supposed_first_and_says_where_to_look(LogSlipKind kind, string begins)
    {
        // What a person who makes that slip writes, from what they saw; independent of how the library undoes it.
        var written = Book(Vigo).Select(entry => kind switch
        {
            LogSlipKind.DaylightTimeForgotten => entry.Faithful with { Clock = entry.Instant.WithOffset(Offset.FromHours(1)).LocalDateTime },
            LogSlipKind.DaylightTimeAddedTwice => entry.Faithful with { Clock = entry.Instant.WithOffset(Offset.FromHours(2)).LocalDateTime },
            LogSlipKind.ClockInUniversalTime => entry.Faithful with { Clock = entry.Instant.InUtc().LocalDateTime },
            LogSlipKind.DateCorrectedAlready => entry.Faithful with { Shown = Later(entry.Faithful.Shown, -SunNow.At(entry.Instant).EquationOfTime.Minutes) },
            LogSlipKind.DateCorrectedWrongWay => entry.Faithful with { Shown = Later(entry.Faithful.Shown, SunNow.At(entry.Instant).EquationOfTime.Minutes) },
            LogSlipKind.CorrectedToTheClock => entry.Faithful with { Shown = DialTime.FromHours(entry.Faithful.Clock.NanosecondOfDay / 3.6e12 + 0.1) },
            LogSlipKind.MorningForAfternoon => entry.Faithful.Shown.Hours >= 13.0 ? entry.Faithful with { Shown = Later(entry.Faithful.Shown, -720.0) } : entry.Faithful,
            _ => entry.Faithful,
        });
        var place = kind == LogSlipKind.LongitudeSignLost ? GeoPoint.FromDegrees(42.24, +8.72) : Vigo.Point;
        var log = LogResiduals.Of(new ObservationLog(written), place, Vigo.Zone);
        var slips = LogSlips.Find(log);
        Assert.Equal(kind, slips[0].Kind);
        Assert.StartsWith(begins, slips[0].Sentence, StringComparison.Ordinal);
        Assert.Contains(": look ", slips[0].Sentence, StringComparison.Ordinal);

        // It is said with the fit, before any fault, and nothing was changed.
        var fit = FaultFit.Of(log, 1.0);
        Assert.Equal(slips[0].Sentence, fit.Sentences[0]);
        Assert.Equal(log.Readings.Select(r => r.Observation.Shown), fit.Readings.Select(r => r.Reading.Observation.Shown));
    }

    [Theory]
    [InlineData("Vigo", 2.0, 0.0, 0.0)]
    [InlineData("Vigo", 10.0, 0.0, 0.0)]
    [InlineData("Vigo", -10.0, 3.0, -3.0)]
    [InlineData("Kathmandu", 10.0, 0.0, 3.0)]
    [InlineData("Kathmandu", -10.0, -3.0, 0.0)]
    public void A_faithful_book_of_a_crooked_dial_raises_no_suspicion(string town, double twist, double east, double north)
    {
        var place = town == "Vigo" ? Vigo : Kathmandu;
        var book = Book(place, DialStance.FromDegrees(twist, east, north));
        Assert.Empty(LogSlips.Find(LogResiduals.Of(new ObservationLog(book.Select(entry => entry.Faithful)), place)));
    }

    [Fact]
    public void A_dial_that_is_off_by_twenty_minutes_is_not_the_books_fault()
    {
        var log = LogResiduals.Of(new ObservationLog(Book(Vigo).Select(e => e.Faithful with { Shown = Later(e.Faithful.Shown, 20.0) })), Vigo);
        Assert.Empty(LogSlips.Find(log));
    }

    [Theory]
    [InlineData(60.0, "It is an hour off: the next hour line may have been read.")]
    [InlineData(-15.0, "It is a quarter of an hour off: the next line may have been read.")]
    [InlineData(25.0, "look at it again, it is not dropped.")]
    public void A_single_wild_reading_gets_a_kind_guess(double minutes, string ends)
    {
        var written = Book(Vigo).Select(e => e.Faithful.Line == 20 ? e.Faithful with { Shown = Later(e.Faithful.Shown, minutes) } : e.Faithful);
        var fit = FaultFit.Of(LogResiduals.Of(new ObservationLog(written), Vigo), 1.0);
        Assert.Contains(fit.Sentences, s => s.StartsWith("Line 20: this reading lies ", StringComparison.Ordinal) && s.EndsWith(ends, StringComparison.Ordinal));
    }

    // Troll, Antarctica: the clock goes back by two hours (TZDB 2026f: +02 to +00 on 25 October 2026 at 01:00 UTC), at a time of the year when the Sun rises before 03:00.
    private static readonly CivilZone Troll = CivilZones.Get("Antarctica/Troll");
    private static readonly GeoPoint TrollStation = GeoPoint.FromDegrees(-72.01, 2.53);

    [Fact]
    public void Of_a_doubled_hour_the_moment_with_light_is_taken_and_said()
    {
        var clock = new LocalDateTime(2026, 10, 25, 2, 58);
        var doubled = Assert.IsType<ClockAnswer.Doubled>(Troll.InstantOf(clock));
        var log = LogResiduals.Of(new ObservationLog([new Observation(7, clock, DialTime.FromHoursMinutes(3, 25), "", "")]), TrollStation, Troll);
        var reading = Assert.Single(log.Readings);
        Assert.Equal(doubled.Later, reading.Instant);
        Assert.Equal("The clock showed 02:58.0 twice that night; the moment is taken at which the dial was lit.", reading.Remark);

        // Written with its offset it needs no guess; and the other moment lies in the dark.
        var told = LogResiduals.Of(new ObservationLog([new Observation(7, clock, DialTime.FromHoursMinutes(3, 25), "", "") { ClockOffset = Offset.Zero }]), TrollStation, Troll);
        Assert.Equal(doubled.Later, Assert.Single(told.Readings).Instant);
        Assert.Null(told.Readings[0].Remark);
        var dark = LogResiduals.Of(new ObservationLog([new Observation(7, clock, DialTime.FromHoursMinutes(3, 25), "", "") { ClockOffset = Offset.FromHours(2) }]), TrollStation, Troll);
        Assert.StartsWith("Line 7: The Sun stands ", Assert.Single(dark.Unused).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_doubled_hour_in_full_light_the_log_is_asked_for_the_offset()
    {
        // The same law a third of the way round the Earth, where that hour is day (an invented station).
        var clock = new LocalDateTime(2026, 10, 25, 2, 30);
        var log = LogResiduals.Of(new ObservationLog([new Observation(7, clock, DialTime.FromHours(11), "", "")]), GeoPoint.FromDegrees(-20, 140), Troll);
        Assert.Empty(log.Readings);
        Assert.Equal(
            "Line 7: Clock time 02:30 on 25 October 2026 happens twice in Antarctica/Troll: first at 00:30 UTC (UTC+0 and 120 min daylight time), again at 02:30 UTC (UTC+0). "
            + "Write the offset after the time: 02:30.0 UTC+2 or UTC+0.",
            Assert.Single(log.Unused).Why);
    }
}
