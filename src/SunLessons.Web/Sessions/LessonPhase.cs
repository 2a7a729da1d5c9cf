namespace SunLessons.Web.Sessions;

/// <summary>Where an open lesson stands.</summary>
public enum LessonPhase
{
    /// <summary>Opened: it can be read, and nothing has run.</summary>
    Reading,

    /// <summary>Its kernel is starting or its cells run for the first time.</summary>
    Starting,

    /// <summary>Its cells have run; controls, checks and cells answer.</summary>
    Live,

    /// <summary>Its kernel ended unasked; the learner's work is kept.</summary>
    Stopped,
}
