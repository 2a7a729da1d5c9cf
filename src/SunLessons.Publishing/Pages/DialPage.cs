using System.Globalization;
using SunLessons.Notebooks;
using SunLessons.Readings;
using SunLessons.Words;

namespace SunLessons.Publishing.Pages;

/// <summary>The page of one dial, for a phone beside it: the date, what it shows, and the clock with each step.</summary>
internal static class DialPage
{
    public const string FileName = "my-dial";

    public static Notebooks.Lesson Lesson(WordTable words) => new("my-dial", words["dial.title"], 99, 1, words["dial.intro"], FileName, "");

    public static Notebook Notebook(WordTable words, string place, DialProfile dial)
    {
        string L(string key) => ProgramLesson.Literal(words[key]);
        return ProgramLesson.Of(
            ("title", CellType.Markdown, $"# {words["dial.title"]}: {place}"),
            ("reading", CellType.Code, $$"""
                var date = Date("date", {{L("dial.date")}});
                var shown = DialShows("shown", {{L("dial.shows")}}, DialTime.FromHoursMinutes(12, 0));
                Show(date, shown);
                """),
            ("dial-today", CellType.Code, $$"""
                // The dial of this page.
                var dial = {{Source(dial)}};
                ClockReading Reading() => ClockFromDial.Read(Here, date, shown, dial);
                string Clock() => Reading() switch
                {
                    ClockReading.One one => Retold(one.Chain.Summary),
                    ClockReading.Several several => Retold(several.Sentence),
                    ClockReading.None none => Retold(none.Sentence),
                    _ => "",
                };
                string Correction() => Reading() is ClockReading.One one ? Retold(one.Chain.Total.InWords()) : "";
                Show(LiveText("correction", Correction, date, shown), LiveText("clock", Clock, date, shown));
                """),
            ("steps", CellType.Code, $$"""Show(Steps("steps", {{L("dial.steps")}}, Reading, date, shown));"""),
            ("safety", CellType.Markdown, words["dial.safety"]));
    }

    /// <summary>The C# that makes the same profile.</summary>
    internal static string Source(DialProfile dial)
    {
        var parts = new List<string>();
        if (dial.ScaleLatitude is { } scale)
        {
            parts.Add($"ScaleLatitude = Latitude.FromDegrees({N(scale.Degrees)})");
        }

        parts.Add($"Style = StyleSet.{dial.Style}");
        parts.Add("Setting = " + Source(dial.Setting));
        return $"new DialProfile {{ {string.Join(", ", parts)} }}";
    }

    private static string Source(DialSetting setting) => setting switch
    {
        DialSetting.TakenAsRight => "new DialSetting.TakenAsRight()",
        DialSetting.NoonLine line => $"new DialSetting.NoonLine(Azimuth.FromDegrees({N(line.TrueAzimuth.Degrees)}))",
        DialSetting.NeedleOnLine needle => $"new DialSetting.NeedleOnLine(new CompassLine(MagneticDeclination.FromDegrees({N(needle.Line.MadeFor.Degrees)}), Angle.FromDegrees({N(needle.Line.NeedleError.Degrees)}))) {Measured(needle.MeasuredDeclination)}",
        DialSetting.CompassShowed compass => $"new DialSetting.CompassShowed(new Compass(CompassBuild.{compass.Compass.Build}, CompassGraduation.{compass.Compass.Graduation}, Angle.FromDegrees({N(compass.Compass.IndexError.Degrees)})), CompassReading.FromDegrees({N(compass.Reading.Degrees)})) {Measured(compass.MeasuredDeclination)}",
        _ => throw new PublishProblemException("A page for a dial whose stance was measured in full is not made; give how its noon line or its needle stands."),
    };

    private static string Measured(MagneticDeclination? declination) => declination is { } d ? $"{{ MeasuredDeclination = MagneticDeclination.FromDegrees({N(d.Degrees)}) }}" : "{ }";

    // Nine decimals of a degree are 0.1 mm on the ground; more would only show how degrees are kept.
    private static string N(double value) => Math.Round(value, 9).ToString("R", CultureInfo.InvariantCulture);
}
