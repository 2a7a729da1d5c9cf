namespace SunLessons.Publishing;

/// <summary>Lessons that cannot be published; the message is one sentence a problem, each with its cell and line where there is one.</summary>
public sealed class PublishProblemException(string message, Exception? inner = null) : Exception(message, inner);
