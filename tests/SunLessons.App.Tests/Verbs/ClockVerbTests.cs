namespace SunLessons.App.Tests.Verbs;

public sealed class ClockVerbTests
{
    [Fact]
    public async Task Text_tells_the_setting_every_step_and_the_doubt()
    {
        var text = await Answers.TextAsync(CommandText.Split(
            """clock --place Vigo --date 2026-06-21 --shown 11:39:12 --scale-latitude 49 --variation-line "15 W" """));
        Assert.StartsWith(
            """
            Vigo, 42.24° N 8.72° W, clock of Europe/Madrid (time-zone rules
            """.ReplaceLineEndings("\n"),
            text,
            StringComparison.Ordinal);
        Assert.Contains(
            """
            Set by its compass: the needle lay over a line engraved for 15° W, that is to
            the left of the plate's north.
            21 June 2026: the dial showed 11:39.2

              step           amount   then it is   give or take (k = 1)
              scale         0.0 min   11:39.2      0.72 min
                         add 0.0 min: the scale is made for 49° N and the place is at
                         42.24° N
              setting     +20.9 min   12:00.1      2.85 min
                         add 20.9 min: the noon line points 14.1 degrees clockwise (east) of
                         true north
              longitude   +94.9 min   13:35.0      0.12 min
                         add 94.9 min: the dial is west of the zone's meridian
              date         +1.8 min   13:36.8      0.00 min
                         add 1.8 min: the Sun is behind the mean clock on this date
              law         +60.0 min   14:36.8      0.00 min
                         add 60.0 min: daylight time is in force

            Clock: 14:36.8 on 21 June 2026 (UTC+1 and 60 min daylight time), give or take
            6.3 min (k = 2: in 95 of 100 cases)
            """.ReplaceLineEndings("\n"),
            text,
            StringComparison.Ordinal);
    }

    // The doubt of a table of whole minutes is half a minute either way, 0.289 standard (GUM 4.3.7); it belongs to the step of the date. Scales 5 degrees apart: 2.5 either way.
    [Fact]
    public async Task A_date_table_and_scales_apart_widen_the_doubt_and_nothing_else()
    {
        var plain = await Clock("--place Vigo --date 2026-12-22 --shown 09:30 --noon-line 0");
        var table = await Clock("--place Vigo --date 2026-12-22 --shown 09:30 --noon-line 0 --date-table");
        var apart = await Clock("--place Vigo --date 2026-12-22 --shown 09:30 --noon-line 0 --scales-apart 5");
        Assert.Equal(plain.At("answers/0/clock")!.GetValue<string>(), table.At("answers/0/clock")!.GetValue<string>());
        Assert.Equal(plain.At("answers/0/clock")!.GetValue<string>(), apart.At("answers/0/clock")!.GetValue<string>());
        Assert.Equal(0.0, plain.Number("answers/0/steps/3/standard_uncertainty_minutes"));
        Assert.Equal(0.5 / Math.Sqrt(3.0), table.Number("answers/0/steps/3/standard_uncertainty_minutes"), 1e-6);
        Assert.True(apart.Number("answers/0/steps/0/standard_uncertainty_minutes") > 2.0 * plain.Number("answers/0/steps/0/standard_uncertainty_minutes"));
    }

    [Fact]
    public async Task A_wall_leads_to_the_clock_that_a_level_dial_does_while_it_is_lit()
    {
        var level = await Clock("--place Vigo --date 2026-06-21 --shown 10:00");
        var wall = await Clock("--place Vigo --date 2026-06-21 --shown 10:00 --plate-inclination 90 --plate-declination -32.5");
        Assert.Equal(level.MinutesOfDay("answers/0/clock"), wall.MinutesOfDay("answers/0/clock"), 1e-4);
        var text = await Answers.TextAsync(CommandText.Split("clock --place Vigo --date 2026-06-21 --shown 10:00 --plate-inclination 90 --plate-declination -32.5"));
        Assert.Contains("A plate that leans 90° from looking straight up and looks 32.5° east of south.\n", text, StringComparison.Ordinal);
        Assert.Contains("Not measured: How well this face is laid out and how truly it leans is not\n", text, StringComparison.Ordinal);
        var dark = await Support.Program.RunAsync(CommandText.Split("clock --place Vigo --date 2026-06-21 --shown 19:00 --plate-inclination 90 --plate-declination -32.5"));
        Assert.Equal(2, dark.ExitCode);
        Assert.Contains("while the Sun is up and shines on its face", dark.Errors, StringComparison.Ordinal);
    }

    // The lessons' eight towns: 4 (15 Z - longitude), recomputed outside this program and printed to 0.1 min. The date is the same for all: the step does
    // not depend on it.
    [Theory]
    [InlineData("Tromso", -15.8)]
    [InlineData("Vigo", 94.9)]
    [InlineData("Kathmandu", 3.7)]
    [InlineData("Nairobi", 32.7)]
    [InlineData("Darwin", 46.6)]
    [InlineData("Dunedin", 38.0)]
    [InlineData("Ushuaia", 93.2)]
    [InlineData("st johns", 0.8)]
    public async Task Longitude_step_of_the_eight_towns(string town, double minutes)
    {
        var clock = await Clock($"--place \"{town}\" --date 2026-03-20 --shown 12:00");
        Assert.Equal(minutes, clock.Number("answers/0/steps/2/amount_minutes"), 0.051);
    }

    // Cross-checks of the lessons with ERFA, recomputed outside this program: clock at solar noon, to half a minute where they say so.
    [Theory]
    [InlineData("Vigo", "2026-11-03", 13 * 60 + 18.4, 0.1)]
    [InlineData("Darwin", "2026-11-03", 12 * 60 + 30.2, 0.5)]
    [InlineData("St. John's", "2026-05-14", 12 * 60 + 57.0, 0.5)]
    public async Task Clock_at_solar_noon_is_the_lessons_own(string town, string date, double minutes, double within)
    {
        var clock = await Clock($"--place \"{town}\" --date {date} --shown 12:00");
        Assert.Equal(minutes, clock.MinutesOfDay("answers/0/clock"), within);
    }

    // Common practice, no source: 4 minutes of time to a degree of longitude; one degree EAST of the zone's meridian the clock is 4 minutes behind the dial.
    [Theory]
    [InlineData("14", 4.0)]
    [InlineData("15", 0.0)]
    [InlineData("16", -4.0)]
    public async Task Four_minutes_of_time_to_a_degree_of_longitude(string longitude, double minutes)
    {
        var clock = await Clock($"--latitude 47.5 --longitude {longitude} --zone UTC+1 --date 2026-02-01 --shown 10:00");
        Assert.Equal(minutes, clock.Number("answers/0/steps/2/amount_minutes"), 1e-9);
    }

    // Common practice, no source: on 21 August three minutes are added for the date.
    [Fact]
    public async Task Date_correction_of_21_August_is_three_minutes()
    {
        var clock = await Clock("--place Vigo --date 2026-08-21 --shown 12:00");
        Assert.Equal(3.0, Math.Round(clock.Number("answers/0/steps/3/amount_minutes")));
    }

    // Common practice, no source: daylight time adds one hour. Europe/Madrid's changes of 2026: 29 March and 25 October (TZDB).
    [Theory]
    [InlineData("2026-03-28", 0.0)]
    [InlineData("2026-03-29", 60.0)]
    [InlineData("2026-10-24", 60.0)]
    [InlineData("2026-10-25", 0.0)]
    public async Task Daylight_time_adds_one_hour(string date, double minutes)
    {
        var clock = await Clock($"--place Vigo --date {date} --shown 12:00");
        Assert.Equal(minutes, clock.Number("answers/0/steps/4/amount_minutes"), 1e-9);
    }

    // The old pocket dial of the lessons (invented), their cross-check 14:36.7 with IGRF-14 where this program takes WMM2025.
    [Fact]
    public async Task Old_dial_with_an_outdated_needle_line_comes_out_as_in_the_lesson()
    {
        var clock = await Clock("""--place Vigo --date 2026-06-21 --shown 11:39:12 --scale-latitude 49 --variation-line "15 W" """);
        Assert.Equal(20.8, clock.Number("answers/0/steps/1/amount_minutes"), 0.3);
        Assert.Equal(14 * 60 + 36.7, clock.MinutesOfDay("answers/0/clock"), 1.0);
        Assert.Equal(177.6, clock.Number("answers/0/total_minutes"), 1.0);
    }

    // Lessons' cross-check: St. John's, dial set by the bare needle, 20 March, about noon: 47 to 51 minutes fast.
    [Fact]
    public async Task Bare_needle_at_St_Johns_makes_the_dial_fast()
    {
        var clock = await Clock("""--place "St. John's" --date 2026-03-20 --shown 12:45 --variation-line 0""");
        Assert.InRange(clock.Number("answers/0/steps/1/amount_minutes"), -51.0, -47.0);
    }

    // Lessons' cross-check: Dunedin, three degrees clockwise at the equinox is 8.6 +- 0.3 min fast all day.
    [Theory]
    [InlineData("09:00")]
    [InlineData("12:00")]
    [InlineData("15:00")]
    public async Task Noon_line_three_degrees_out_at_Dunedin(string shown)
    {
        var clock = await Clock($"--place Dunedin --date 2026-03-20 --shown {shown} --noon-line 3");
        Assert.Equal(-8.6, clock.Number("answers/0/steps/1/amount_minutes"), 0.3);
    }

    [Fact]
    public async Task Noon_line_counts_from_true_north_both_ways_round()
    {
        var left = await Clock("--place Dunedin --date 2026-03-20 --shown 12:00 --noon-line -3");
        var around = await Clock("--place Dunedin --date 2026-03-20 --shown 12:00 --noon-line 357");
        Assert.True(left.Number("answers/0/steps/1/amount_minutes") > 0.0);
        Assert.Equal(left.ToJsonString(), around.ToJsonString());
    }

    // Lessons' cross-check: Dunedin, bearing 340 on the compass is 6.4 +- 0.3 degrees true. The four kinds of compass read the same direction as the
    // figures engraved demand: growing with the bearing 340, against it 20 (geometry; see the pictures of the compass types).
    [Theory]
    [InlineData("340", "clockwise", "card")]
    [InlineData("20", "anticlockwise", "card")]
    [InlineData("20", "clockwise", "needle")]
    [InlineData("340", "anticlockwise", "needle")]
    public async Task Four_kinds_of_compass_say_the_same_direction(string reading, string card, string compass)
    {
        var clock = await Clock($"--place Dunedin --date 2026-03-20 --shown 12:00 --compass-reading {reading} --card {card} --compass {compass}");
        Assert.Matches(@"the noon line points 6\.[1-7] degrees clockwise \(east\) of true north", clock.At("answers/0/steps/1/in_words")!.GetValue<string>());
    }

    // Each pair says one thing in two ways.
    [Theory]
    [InlineData("--compass-reading 340 --card clockwise --compass card", "--compass-reading 342 --card clockwise --compass card --index-error 2")]
    [InlineData("--compass-reading 340 --card clockwise --compass card", "--compass-reading 338.5 --card clockwise --compass card --index-error -1.5")]
    [InlineData("--variation-line \"15 W\"", "--variation-line -15")]
    [InlineData("--variation-line \"15 W\"", "--variation-line 15 --west-positive")]
    [InlineData("--variation-line \"15 W\"", "--variation-line \"15 W\" --west-positive")]
    [InlineData("--variation-line \"15 W\"", "--variation-line \"13 W\" --needle-error 2")]
    [InlineData("--variation-line 0 --variation \"20 E\"", "--variation-line 0 --variation -20 --west-positive")]
    public async Task Compass_conventions_agree(string one, string other)
    {
        const string Rest = "--place Dunedin --date 2026-03-20 --shown 12:00 ";
        var first = await Clock(Rest + one);
        var second = await Clock(Rest + other);
        Assert.NotEqual(0.0, first.Number("answers/0/steps/1/amount_minutes"));
        Assert.Equal(first.Number("answers/0/steps/1/amount_minutes"), second.Number("answers/0/steps/1/amount_minutes"), 1e-6);
    }

    [Fact]
    public async Task Declination_known_better_answers_where_no_model_does()
    {
        var clock = await Clock("""--place Vigo --date 2050-06-21 --shown 12:00 --variation-line "15 W" --variation "2 E" """);
        Assert.Contains("17.0 degrees clockwise", clock.At("answers/0/steps/1/in_words")!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Weak_field_warns_in_the_answer()
    {
        var clock = await Clock("--latitude 76 --longitude -100 --zone UTC-6 --date 2026-06-21 --shown 12:00 --variation-line 0");
        Assert.Contains("Use with caution", clock.At("answers/0/caution")!.GetValue<string>(), StringComparison.Ordinal);
    }

    // As the answers print a time it can be typed again: 11:39.2 is 11:39:12.
    [Theory]
    [InlineData("11:39.2")]
    [InlineData("11:39,2")]
    [InlineData("11:39:12")]
    public async Task Reading_is_typed_with_seconds_or_parts_of_a_minute(string shown)
    {
        var clock = await Clock("--place Vigo --date 2026-06-21 --shown " + shown);
        Assert.Equal(11.0 + 39.2 / 60.0, clock.Number("answers/0/shown_hours"), 1e-9);
    }

    [Fact]
    public async Task Way_back_shows_what_the_way_there_began_with()
    {
        const string Dial = """--place Vigo --date 2026-06-21 --scale-latitude 49 --variation-line "15 W" """;
        var there = await Clock(Dial + "--shown 14:30");
        var clock = there.At("answers/0/clock")!.GetValue<string>();
        var seconds = TimeSpan.Parse(clock[11..], System.Globalization.CultureInfo.InvariantCulture).TotalSeconds;
        var back = await Clock($"{Dial} --reverse --clock {clock[11..19]}");

        // The clock is typed in whole seconds: what is cut off stands in the way back, an hour of the dial for about an hour of the clock.
        Assert.Equal(14.5 - seconds % 1.0 / 3600.0, back.Number("answers/0/should_show_hours"), 2e-5);
        Assert.Equal(back.Number("answers/0/should_show_hours"), back.Number("answers/0/chain/shown_hours"), 1e-9);
    }

    [Fact]
    public async Task Way_back_tells_how_to_set_the_dial_without_a_compass()
    {
        var text = await Answers.TextAsync(CommandText.Split("clock --place Vigo --date 2026-06-21 --reverse --clock 16:00"));
        Assert.Contains("21 June 2026: the clock shows 16:00.0 (UTC+1 and 60 min daylight time)\n", text, StringComparison.Ordinal);

        // 16:00 less 60 min of daylight time, 94.9 min of longitude and 1.8 min of the date.
        Assert.Contains("\nThe dial should show 13:23.3, give or take 2.", text, StringComparison.Ordinal);
        Assert.Contains(
            """

            To set it without a compass: At 16:00.0 on 21 June 2026 lay the dial level and
            turn it until it shows 13:23.3: then its noon line points true north, give or
            take
            """.ReplaceLineEndings("\n"),
            text,
            StringComparison.Ordinal);
    }

    // Europe/Madrid was moved back on 25 October 2026; a place far from it makes the hour one of daylight.
    [Fact]
    public async Task Way_back_of_a_doubled_hour_names_both_answers()
    {
        const string Call = "--latitude 0.5 --longitude 170 --zone Europe/Madrid --date 2026-10-25 --reverse --clock 02:30";
        var both = await Clock(Call);
        Assert.Equal(
            "Clock time 02:30 on 25 October 2026 happens twice in Europe/Madrid: first at 00:30 UTC (UTC+1 and 60 min daylight time), "
            + "again at 01:30 UTC (UTC+1). Say which one you mean: the earlier or the later.",
            both.At("several_in_words")!.GetValue<string>());
        Assert.Equal(2, both.At("answers")!.AsArray().Count);
        Assert.Equal(1.0, both.Number("answers/1/should_show_hours") - both.Number("answers/0/should_show_hours"), 1e-4);
        var later = await Clock(Call + " --later");
        Assert.Null(later.At("several_in_words"));
        Assert.Equal(both.At("answers/1")!.ToJsonString(), later.At("answers/0")!.ToJsonString());
        var text = await Answers.TextAsync(CommandText.Split("clock " + Call));
        Assert.Contains("The dial should show 12:05.9", text, StringComparison.Ordinal);
        Assert.Contains("The dial should show 13:05.9", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Scales_are_ranked_by_the_worst_of_the_year()
    {
        var text = await Answers.TextAsync(CommandText.Split("clock --place Vigo --date 2026-06-21 --clock 16:36 --scales 35,40,45"));
        var rows = text.Split('\n').Where(line => line.StartsWith("  ", StringComparison.Ordinal)).Skip(1).Select(line => line[2..4]);
        Assert.Equal(["40", "45", "35"], rows);
        Assert.EndsWith("\nUse the scale for 40° N.", text, StringComparison.Ordinal);
    }

    // Lessons' closed form, whatever the date: a scale for s at latitude f with the style true is wrong by 4 asin((q - 1) / (q + 1)) min at worst, q the
    // ratio of the sines of s and f; 5.3 +- 0.3 at 47 for a scale of 50. The ranking takes a Sun 5 degrees high or more, in steps of 5 minutes.
    [Theory]
    [InlineData("47", "50")]
    [InlineData("47", "44")]
    [InlineData("-46", "-50")]
    public async Task Worst_error_of_a_scale_with_the_style_true_is_the_closed_form(string latitude, string scale)
    {
        var ranked = await Clock($"--latitude {latitude} --longitude 0 --zone UTC --date 2026-06-21 --shown 09:00 --scales {scale} --style place");
        var q = Sin(scale) / Sin(latitude);
        var worst = 4.0 * Math.Asin(Math.Abs((q - 1.0) / (q + 1.0))) * 180.0 / Math.PI;
        Assert.Equal(worst, Math.Abs(ranked.Number("scales/0/worst_fast_of_year_minutes")), 0.01);
        Assert.Equal("place", ranked.At("style_set_for")!.GetValue<string>());
    }

    [Fact]
    public async Task Scale_that_cannot_be_used_comes_last_with_its_reason()
    {
        var ranked = await Clock("--place Nairobi --date 2026-06-21 --shown 09:00 --scales 0,-5,-3");
        Assert.Equal(
            "A level dial for latitude 0 degrees has its style along the plate and no hour lines; choose a scale and style away from the equator, or another kind of dial.",
            ranked.At("scales/2/cannot_be_used_in_words")!.GetValue<string>());
        Assert.Null(ranked.At("scales/2/worst_fast_of_year_minutes"));
        Assert.Null(ranked.At("scales/0/cannot_be_used_in_words"));
    }

    [Theory]
    [InlineData("--latitude -45.87 --longitude -8.72 --zone UTC-1", -45.87, -8.72)]
    [InlineData("--latitude=-45.87 --longitude=-8.72 --zone UTC-1", -45.87, -8.72)]
    [InlineData("--latitude \"45.87 S\" --longitude \"8.72 W\" --zone UTC-1", -45.87, -8.72)]
    public async Task Negative_numbers_are_values_not_options(string place, double latitude, double longitude)
    {
        var clock = await Clock(place + " --date 2026-03-20 --shown 12:00 --noon-line -2 --scale-latitude -45");
        Assert.Equal(latitude, clock.Number("place/latitude_degrees"));
        Assert.Equal(longitude, clock.Number("place/longitude_degrees"));
        Assert.Contains("2.0 degrees anticlockwise (west)", clock.At("answers/0/steps/1/in_words")!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Contains("the scale is made for 45° S", clock.At("answers/0/steps/0/in_words")!.GetValue<string>(), StringComparison.Ordinal);
    }

    private static double Sin(string degrees) => Math.Sin(double.Parse(degrees, System.Globalization.CultureInfo.InvariantCulture) * Math.PI / 180.0);

    private static Task<System.Text.Json.Nodes.JsonObject> Clock(string arguments) => Answers.JsonAsync(CommandText.Split("clock " + arguments));
}
