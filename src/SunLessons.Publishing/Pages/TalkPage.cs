using SunLessons.Notebooks;
using SunLessons.Words;

namespace SunLessons.Publishing.Pages;

/// <summary>The page for someone who explains a reading of their own to an audience.</summary>
internal static class TalkPage
{
    public static Notebooks.Lesson Lesson(WordTable words) => new("talk", words["talk.title"], 99, 15, words["talk.intro"], PageFrame.NameIn("talk", words), "");

    public static Notebook Notebook(WordTable words)
    {
        string L(string key) => ProgramLesson.Literal(words[key]);
        return ProgramLesson.Of(
            ("title", CellType.Markdown, $"# {words["talk.title"]}\n\n{words["talk.intro"]}"),
            ("reading", CellType.Code, $$"""
                var date = Date("date", {{L("dial.date")}});
                var shown = DialShows("shown", {{L("dial.shows")}}, DialTime.FromHoursMinutes(10, 30));
                var madeFor = Number("made-for", {{L("talk.made")}}, -66, 66, 0.5, 49, "°");
                var turned = Number("turned", {{L("talk.turned")}}, -30, 30, 0.5, 0, "°");
                Show(date, shown, madeFor, turned);
                """),
            ("talk", CellType.Code, """
                Show(Talk("talk", () => ClockFromDial.Read(Here, date, shown, new DialProfile
                {
                    ScaleLatitude = Latitude.FromDegrees(madeFor),
                    Setting = new DialSetting.NoonLine(Azimuth.FromDegrees(turned)),
                }), date, shown, madeFor, turned));
                """),
            ("keys", CellType.Markdown, words["talk.keys"]));
    }
}
