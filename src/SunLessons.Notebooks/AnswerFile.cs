using System.Text.Json.Nodes;

namespace SunLessons.Notebooks;

/// <summary>
/// What a learner hands to a teacher: one JSON file a lesson, of the same shape from the program's pages and from published ones. It holds predictions, answers
/// and their times, the place, and no name.
/// </summary>
public static class AnswerFile
{
    /// <summary>The file's content.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="place">Where the learner stands, as pages tell it to a kernel.</param>
    /// <param name="record">What the learner did, by key.</param>
    public static JsonObject Of(Lesson lesson, JsonObject place, JsonObject record)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(place);
        ArgumentNullException.ThrowIfNull(record);
        return new JsonObject
        {
            ["format"] = "sunlessons-answers",
            ["version"] = 1,
            ["lesson"] = lesson.Id,
            ["title"] = lesson.Title,
            ["language"] = lesson.Language,
            ["place"] = place.DeepClone(),
            ["record"] = record.DeepClone(),
        };
    }

    /// <summary>What the file is called.</summary>
    public static string NameOf(Lesson lesson) => $"{lesson?.Id}-answers.json";
}
