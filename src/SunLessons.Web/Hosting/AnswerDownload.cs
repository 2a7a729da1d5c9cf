using System.Text;
using Microsoft.AspNetCore.Http;
using SunLessons.Notebooks;
using SunLessons.Web.Sessions;

namespace SunLessons.Web.Hosting;

/// <summary>Gives a learner their own answers as one file; like every address it wants the token or the cookie first.</summary>
internal static class AnswerDownload
{
    /// <summary>The address, by lesson.</summary>
    public const string Pattern = "/answers/{id}";

    public static IResult Of(string id, LessonSessions sessions, LearnerSettings settings)
    {
        try
        {
            var copy = sessions.Open(id).Copy;
            var file = AnswerFile.Of(copy.Lesson, LearnerSettings.ToJson(settings.Place), copy.Record);
            return Results.File(Encoding.UTF8.GetBytes(file.ToString()), "application/json; charset=utf-8", AnswerFile.NameOf(copy.Lesson));
        }
        catch (NotebookFormatException problem)
        {
            return Results.Text(problem.Message, "text/plain; charset=utf-8", statusCode: StatusCodes.Status404NotFound);
        }
    }
}
