namespace SunLessons.App.Tests.Verbs;

/// <summary>What cannot be answered is said in whole on standard error, with exit code 2, and nothing on standard output.</summary>
public sealed class BadInputTests
{
    private const string Vigo = "clock --place Vigo --date 2026-06-21 ";

    [Theory]

    // The place.
    [InlineData(
        "clock --date 2026-06-21 --shown 12:00",
        "Where the dial stands is missing; give --place with a town, or --latitude and --longitude in degrees and --zone with the clock's zone, such as --latitude 42.24 --longitude -8.72 --zone Europe/Madrid.")]
    [InlineData(
        "north --date 2026-06-21",
        "Where the dial stands is missing; give --place with a town, or --latitude and --longitude in degrees, such as --latitude 42.24 --longitude -8.72.")]
    [InlineData(
        "sun --latitude 42 --longitude -8 --date 2026-06-21 --time 12:00",
        "Where the dial stands is missing; give --place with a town, or --latitude and --longitude in degrees and --zone with the clock's zone, such as --latitude 42.24 --longitude -8.72 --zone Europe/Madrid.")]
    [InlineData(
        Vigo + "--latitude 42 --shown 12:00",
        "The place was given twice; give either --place, or --latitude, --longitude and --zone.")]
    [InlineData(
        "clock --latitude 97.3 --longitude -8.72 --zone Europe/Madrid --date 2026-06-21 --shown 12:00",
        "Latitude 97.3 degrees is outside -90 to +90 degrees (north positive). Did you swap latitude and longitude?")]
    [InlineData(
        "sun --latitude 42 --longitude 188 --utc 2026-06-21T12:00:00Z",
        "Longitude 188 degrees is outside -180 to +180 degrees (east positive). Write west as a negative number or with W.")]
    [InlineData(
        "sun --latitude north --longitude 18 --utc 2026-06-21T12:00:00Z",
        "Latitude “north” cannot be read; -90 to +90 degrees (north positive) are allowed: write it like 42.24 or 42° 14′ N.")]
    [InlineData(
        "north --place Vigo --height 900000 --date 2026-06-21",
        "Height 900000 is outside -1000 to +850000 metres; write metres above the sea, such as 1400.")]
    [InlineData(
        "north --place Vigo --height high --date 2026-06-21",
        "Height “high” is not a number; -1000 to +850000 metres are allowed: write metres above the sea, such as 1400.")]

    // The date.
    [InlineData(
        "clock --place Vigo --shown 12:00",
        "The date is missing; give --date with year, month and day, such as --date 2026-11-03.")]
    [InlineData(
        "north --place Vigo",
        "The date is missing; give --date with year, month and day, such as --date 2026-11-03.")]
    [InlineData(
        "clock --place Vigo --date 21.6.2026 --shown 12:00",
        "Date “21.6.2026” cannot be read; a day of the calendar is allowed: write year, month and day, such as 2026-11-03.")]
    [InlineData(
        "clock --place Vigo --date 2026-02-29 --shown 12:00",
        "Date “2026-02-29” cannot be read; a day of the calendar is allowed: write year, month and day, such as 2026-11-03.")]
    [InlineData(
        "clock --place Vigo --date 1850-01-01 --shown 12:00",
        "Date 1 January 1850 is outside the years 1900 to 2100, for which the Sun's place is known here; write a date of these years.")]
    [InlineData(
        "sun --place Vigo --date 2101-01-01 --time 12:00",
        "Date 1 January 2101 is outside the years 1900 to 2100, for which the Sun's place is known here; write a date of these years.")]
    [InlineData(
        "sun --place Vigo --utc 1899-12-31T23:59:59Z",
        "Date 31 December 1899 is outside the years 1900 to 2100, for which the Sun's place is known here; write a date of these years.")]
    [InlineData(
        "clock --place Vigo --date 2101-06-01 --clock 12:00 --scales 35,40",
        "Date 1 June 2101 is outside the years 1900 to 2100, for which the Sun's place is known here; write a date of these years.")]
    [InlineData(
        "clock --place Vigo --date 1850-06-01 --clock 12:00 --reverse",
        "Date 1 June 1850 is outside the years 1900 to 2100, for which the Sun's place is known here; write a date of these years.")]

    // The moment of the Sun.
    [InlineData(
        "sun --place Vigo",
        "The moment is missing; give --date and --time by the clock of the place, such as --date 2026-06-21 --time 14:30, or --utc, or --ut1-jd and --tt-minus-ut1.")]
    [InlineData(
        "sun --place Vigo --date 2026-06-21",
        "The time is missing; give --time with what the clock shows, such as --time 14:30.")]
    [InlineData(
        "sun --place Vigo --date 2026-06-21 --time 12:00 --utc 2026-06-21T12:00:00Z",
        "The moment was given twice; give either --date and --time, or --utc, or --ut1-jd and --tt-minus-ut1.")]
    [InlineData(
        "sun --place Vigo --utc 2026-06-21T12:00:00+02:00",
        "Universal time “2026-06-21T12:00:00+02:00” cannot be read; date, the letter T and time are allowed, without an offset: write it like 2026-06-21T12:00:00Z.")]
    [InlineData(
        "sun --place Vigo --ut1-jd 2461213.0",
        "--ut1-jd and --tt-minus-ut1 belong together; give both, such as --ut1-jd 2461213.0 --tt-minus-ut1 69.1.")]
    [InlineData(
        "sun --place Vigo --ut1-jd 61213 --tt-minus-ut1 69.1",
        "UT1 61213 is outside 2415020.5 to 2488434.5 (Julian date, the years 1900 to 2100); write days, such as 2461213.0 for 12h UT1 on 21 June 2026.")]
    [InlineData(
        "sun --place Vigo --ut1-jd 2461213.0 --tt-minus-ut1 6910",
        "TT minus UT1 6910 is outside -1000 to +1000 seconds; write seconds, such as 69.1 in 2026.")]
    [InlineData(
        "sun --latitude 0 --longitude 0 --zone UTC --ut1-jd 2461213.0 --tt-minus-ut1 69.1",
        "--zone has no part in --ut1-jd, whose times are all UT1; leave --zone out, or give --utc instead.")]
    [InlineData(
        "sun --place Vigo --date 2026-06-21 --time 25:00",
        "Clock time “25:00” cannot be read; 00:00 to 23:59 are allowed: write hours and minutes, such as 14:30.")]

    // Hours that a clock skipped or showed twice. TZDB 2026f: Europe/Madrid, 29 March and 25 October 2026.
    [InlineData(
        "sun --place Vigo --date 2026-03-29 --time 02:30",
        "Clock time 02:30 on 29 March 2026 does not exist in Europe/Madrid: the clock was moved from 02:00 to 03:00. Write 01:30 or 03:30.")]
    [InlineData(
        "clock --place Vigo --date 2026-03-29 --reverse --clock 02:30",
        "Clock time 02:30 on 29 March 2026 does not exist in Europe/Madrid: the clock was moved from 02:00 to 03:00. Write 01:30 or 03:30.")]
    [InlineData(
        "sun --place Vigo --date 2026-10-25 --time 02:30",
        "Clock time 02:30 on 25 October 2026 happens twice in Europe/Madrid: first at 00:30 UTC (UTC+1 and 60 min daylight time), again at 01:30 UTC (UTC+1). Say which one you mean: the earlier or the later (write --earlier or --later).")]
    [InlineData(
        "clock --place Vigo --date 2026-10-25 --reverse --clock 02:30 --earlier",
        "At 02:30.0 on 25 October 2026 at 42.24° N 8.72° W the Sun is down; it rises at 07:59.3 and sets at 18:38.0 by the clock, so ask for a time when it is up.")]
    [InlineData(
        "sun --place Vigo --date 2026-06-21 --time 12:00 --later",
        "The clock shows that time once, so there is nothing to choose; leave --later out.")]
    [InlineData(
        "sun --place Vigo --date 2026-10-25 --time 02:30 --earlier --later",
        "Both --earlier and --later were given; give the one that is meant.")]
    [InlineData(
        Vigo + "--shown 12:00 --earlier",
        "--earlier and --later choose between two clock times, and --shown gives none; leave them out.")]

    // What is asked of clock.
    [InlineData(
        "clock --place Vigo --date 2026-06-21",
        "What the dial showed is missing; give --shown, such as --shown 11:30, or --reverse and --clock for the way back.")]
    [InlineData(
        Vigo + "--shown noon",
        "Dial reading “noon” cannot be read; 00:00 to 23:59 are allowed: write hours and minutes, such as 14:30.")]
    [InlineData(
        Vigo + "--shown 11:60",
        "Dial reading “11:60” cannot be read; 00:00 to 23:59 are allowed: write hours and minutes, such as 14:30.")]
    [InlineData(
        Vigo + "--shown 12:00 --clock 14:30",
        "Both --shown and --clock were given; give --shown for the way from the dial to the clock, or --clock with --reverse for the way back.")]
    [InlineData(
        Vigo + "--clock 14:30",
        "--clock alone asks nothing; add --reverse for what the dial should show then, or give --shown with what it showed.")]
    [InlineData(
        Vigo + "--reverse --shown 12:00",
        "--reverse asks what the dial should show; give --clock with what the clock shows, such as --clock 14:30, and leave --shown out.")]
    [InlineData(
        Vigo + "--reverse",
        "The time is missing; give --clock with what the clock shows, such as --clock 14:30.")]
    [InlineData(
        Vigo + "--reverse --clock 14:30 --scales 35,40",
        "--reverse and --scales ask two different things; give one at a time.")]
    [InlineData(
        Vigo + "--scales 35,40",
        "--scales needs a moment of the day; give --clock with what the clock shows, or --shown with what the dial showed.")]
    [InlineData(
        Vigo + "--scales 35,40 --shown 12:00 --noon-line 3",
        "--scales judges each scale on a dial that stands level and true; leave --noon-line out.")]
    [InlineData(
        Vigo + "--scales 35,,40 --shown 12:00",
        "Latitude “” cannot be read; -90 to +90 degrees (north positive) are allowed: write it like 42.24 or 42° 14′ N.")]

    // How the dial was made and set.
    [InlineData(
        Vigo + "--shown 12:00 --style place",
        "--style needs --scale-latitude: a dial made for the place has its style set for the place; give the latitude of its scale too, such as --scale-latitude 49.")]
    [InlineData(
        Vigo + "--shown 12:00 --scale-latitude 49 --style level",
        "--style “level” is not known; scale and place are allowed: write --style scale or --style place.")]
    [InlineData(
        Vigo + "--shown 12:00 --scale-latitude -49",
        "A scale for 49° S and a place at 42.24° N lie on two sides of the equator; a scale for the place's side is needed: write 49 if that is meant, south negative.")]
    [InlineData(
        Vigo + "--shown 12:00 --noon-line 3 --variation-line 15",
        "How the dial stands was given twice, by --noon-line and --variation-line; give one of --noon-line, --variation-line and --compass-reading.")]
    [InlineData(
        Vigo + "--shown 12:00 --scale-latitude 49 --scales-apart 5",
        "--scales-apart is for a scale whose latitude is not corrected for, and --scale-latitude corrects for it; give one of them.")]
    [InlineData(
        Vigo + "--shown 12:00 --scales-apart 90",
        "Spacing of the scales 90 is outside 0.1 to 45 degrees; write how far apart in latitude they are, such as 5.")]
    [InlineData(
        Vigo + "--shown 12:00 --plate-declination 20",
        "--plate-declination has nothing to act on; give --plate-inclination too, or leave it out.")]
    [InlineData(
        Vigo + "--shown 12:00 --plate-inclination 200",
        "Plate inclination 200 is outside 0 to 180 degrees; write 90 for a wall, 0 for a level plate.")]
    [InlineData(
        Vigo + "--shown 12:00 --plate-inclination 90 --noon-line 3",
        "A noon line and a compass set a plate that lies level; for a face that does not, give how it stands by twist and tilts, or leave it out.")]
    [InlineData(
        Vigo + "--shown 12:00 --noon-line 400",
        "Noon line 400 is outside -180 to +360 degrees (true azimuth, clockwise positive); write where its north end points, such as 12.5.")]
    [InlineData(
        Vigo + "--shown 12:00 --noon-line east",
        "Noon line “east” is not a number; -180 to +360 degrees (true azimuth, clockwise positive) are allowed: write where its north end points, such as 12.5.")]
    [InlineData(
        Vigo + "--shown 12:00 --compass-reading 340 --compass card",
        "--compass-reading needs --card, because a card graduated the other way means the opposite turn; give --card clockwise (90 at the right hand of 0) or --card anticlockwise.")]
    [InlineData(
        Vigo + "--shown 12:00 --compass-reading 340 --card clockwise",
        "--compass-reading needs --compass, because a needle and a moving card turn opposite ways; give --compass needle (a needle over a fixed card) or --compass card (a moving card).")]
    [InlineData(
        Vigo + "--shown 12:00 --compass-reading 370 --card clockwise --compass card",
        "Compass reading 370 is outside 0 to 360 degrees; write the figure on the card, such as 340.")]
    [InlineData(
        Vigo + "--shown 12:00 --compass-reading 34 --card left --compass card",
        "--card “left” is not known; clockwise and anticlockwise are allowed: write --card clockwise or --card anticlockwise.")]
    [InlineData(
        Vigo + "--shown 12:00 --index-error 2",
        "--index-error has nothing to act on; give --compass-reading too, or leave it out.")]
    [InlineData(
        Vigo + "--shown 12:00 --west-positive",
        "--west-positive has nothing to act on; give --variation-line or --variation too, or leave it out.")]
    [InlineData(
        Vigo + "--shown 12:00 --variation-line \"15 N\"",
        "Variation \"15 N\" has N or S: a variation goes east or west of north, allowed are E and W; write 15 W or 15 E.")]

    // What the sky, the plate and the field refuse.
    [InlineData(
        "clock --place Tromso --date 2026-12-21 --shown 12:00",
        "When a dial shows 12:00.0 on 21 December 2026 at 69.65° N 18.96° E the Sun is down; it does not rise at all, so give another date.")]
    [InlineData(
        "clock --place Nairobi --date 2026-06-21 --shown 12:00 --scale-latitude 0",
        "A level dial for latitude 0 degrees has its style along the plate and no hour lines; choose a scale and style away from the equator, or another kind of dial.")]
    [InlineData(
        "clock --place Nairobi --date 2026-06-21 --shown 12:00 --scale-latitude 5 --style place",
        "A style for 1.29° S would run into a plate with a scale for 5° N; use style and scale of one hemisphere.")]
    [InlineData(
        "clock --latitude 85 --longitude -140 --zone UTC-9 --date 2026-06-21 --shown 12:00 --variation-line 0",
        "No compass can be used here: the level field is 1163 nT, below 2000 nT (WMM2025, 2026.5). Find north by the Sun.")]
    [InlineData(
        "clock --place Vigo --date 2040-06-21 --shown 12:00 --variation-line 0",
        "WMM2025 was valid until 2030.0 and cannot answer for 2040.5: add the next model's coefficient file with \"sunlessons data add\" or get a newer version of this program, or set the dial by the Sun instead of the compass.")]
    [InlineData(
        "north --place Vigo --date 2030-01-02",
        "WMM2025 was valid until 2030.0 and cannot answer for 2030.0: add the next model's coefficient file with \"sunlessons data add\" or get a newer version of this program, or set the dial by the Sun instead of the compass.")]
    [InlineData(
        "north --place Vigo --date 1850-07-01 --json",
        "No model here reaches back to 1850.5: IGRF-14 begins with 1900.0, when the needle pointed 18.0 degrees west of true north; before that it may have differed by many degrees. Look for an observation made near that place and time.")]
    public async Task Is_said_in_whole(string call, string sentence)
    {
        var run = await Support.Program.RunAsync(CommandText.Split(call));
        Assert.Equal("", run.Output);
        Assert.Equal(sentence, run.Errors.TrimEnd());
        Assert.Equal(2, run.ExitCode);
    }

    // Near matches grow with the time-zone database: only the beginning and the end of the sentence are ours.
    [Theory]
    [InlineData("clock --place Vgo --date 2026-06-21 --shown 12:00", "Place \"Vgo\" is not in the gazetteer of ", "Did you mean Vigo? Otherwise give latitude, longitude and zone.")]
    [InlineData("clock --latitude 42 --longitude -8 --zone Europe/Madrod --date 2026-06-21 --shown 12:00", "Zone \"Europe/Madrod\" is not in the time-zone database ", "Did you mean Europe/Madrid?")]
    public async Task Unknown_names_get_near_matches(string call, string begins, string ends)
    {
        var run = await Support.Program.RunAsync(CommandText.Split(call));
        Assert.Equal("", run.Output);
        Assert.StartsWith(begins, run.Errors, StringComparison.Ordinal);
        Assert.EndsWith(ends, run.Errors.TrimEnd(), StringComparison.Ordinal);
        Assert.Equal(2, run.ExitCode);
    }

    [Theory]
    [InlineData("clock --sundial", "Unrecognized command or argument '--sundial'.")]
    [InlineData("clock --shown", "Required argument missing for option: '--shown'.")]
    public async Task Unknown_options_point_to_the_help(string call, string sentence)
    {
        var run = await Support.Program.RunAsync(CommandText.Split(call));
        Assert.Equal("", run.Output);
        Assert.Equal([sentence, "Write sunlessons --help to see what is allowed."], run.Errors.ReplaceLineEndings("\n").TrimEnd().Split('\n'));
        Assert.Equal(2, run.ExitCode);
    }

    [Theory]
    [InlineData("clock --place Vigo --date 2026-06-21 --shown 11:39 --scale-latitude 49 --variation-line \"15 W\"")]
    [InlineData("clock --place Vigo --date 2026-06-21 --reverse --clock 14:30 --compass-reading 340 --card anticlockwise --compass needle --index-error -1.5")]
    [InlineData("clock --place Kathmandu --date 2026-06-21 --clock 09:30 --scales 20,25,30,0")]
    [InlineData("sun --place \"St. John's\" --date 2026-06-21 --time 14:30")]
    [InlineData("sun --place Tromso --utc 2026-12-21T12:00:00Z")]
    [InlineData("sun --latitude -45.87 --longitude 170.5 --ut1-jd 2461213.0 --tt-minus-ut1 69.1")]
    [InlineData("north --latitude 85 --longitude -140 --date 2026-06-21")]
    public async Task Text_keeps_within_80_columns(string call)
    {
        var text = await Answers.TextAsync(CommandText.Split(call));
        Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
    }
}
