using SunLessons.Places;

namespace SunLessons.Cells.Controls;

/// <summary>One of the eight towns of the lessons, or the learner's own place, which it follows.</summary>
public sealed class TownControl : ChoiceControl
{
    // In the record "here" means whatever place the learner has by then.
    private const string HereName = "here";

    internal TownControl(Lesson lesson, string key, string label, string? start)
        : base(lesson, key, label, Names(lesson), StartIndex(lesson, start))
    {
        lesson.PlaceMoved += Follow;
    }

    /// <summary>The chosen place.</summary>
    public Place Place => Index == 0 ? Lesson.Here : Gazetteer.Towns[Index - 1];

    /// <inheritdoc/>
    public override string Position => Place.Name;

    // The eight towns; the learner's own place only when it is none of them.
    internal override IReadOnlyList<double> Stations => [.. base.Stations.Where(i => i > 0 || !Gazetteer.Towns.Contains(Lesson.Here))];

    private protected override string RecordName => Index == 0 ? HereName : Gazetteer.Towns[Index - 1].Name;

    internal override void Retire()
    {
        base.Retire();
        Lesson.PlaceMoved -= Follow;
    }

    private protected override int IndexOf(string name) =>
        name == HereName ? 0 : Gazetteer.Towns.ToList().FindIndex(t => t.Name == name) is var i and >= 0 ? i + 1 : -1;

    private static string[] Names(Lesson lesson) => [Worded($"My place: {lesson.Here.Name}"), .. Gazetteer.Towns.Select(t => t.Name)];

    private static int StartIndex(Lesson lesson, string? start)
    {
        if (start is null)
        {
            return 0;
        }

        return Gazetteer.Find(start) switch
        {
            PlaceAnswer.Found found when Gazetteer.Towns.ToList().IndexOf(found.Place) is var i and >= 0 => i + 1,
            _ => throw new ArgumentException($"'{start}' is none of the eight towns. Write one of {string.Join(", ", Gazetteer.Towns.Select(t => t.Name))}."),
        };
    }

    private void Follow() => Rename(Names(Lesson));
}
