using SunLessons.Notebooks;
using SunLessons.Web.Hosting;

namespace SunLessons.Web.Sessions;

/// <summary>The lessons that are open in this program, one session each however many windows show it.</summary>
public sealed class LessonSessions(PagesOptions options, LearnerSettings settings) : IAsyncDisposable
{
    private readonly Dictionary<string, LessonSession> _open = [];
    private readonly Lock _lock = new();

    /// <summary>The lessons that can be opened.</summary>
    public LessonShelf Shelf { get; } = new(options.LessonsFolder);

    /// <summary>Opens a lesson, or gives the session that is open already.</summary>
    /// <exception cref="NotebookFormatException">There is no such lesson, or its file is no notebook; one sentence.</exception>
    public LessonSession Open(string lessonId)
    {
        lock (_lock)
        {
            if (!_open.TryGetValue(lessonId, out var session))
            {
                var copy = LearnerCopy.Open(Shelf.Find(lessonId), options.LearnerFolder);
                session = new LessonSession(copy, settings, options.KernelCommand);
                _open[lessonId] = session;
            }

            return session;
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        List<LessonSession> sessions;
        lock (_lock)
        {
            sessions = [.. _open.Values];
            _open.Clear();
        }

        foreach (var session in sessions)
        {
            await session.DisposeAsync();
        }
    }
}
