namespace SunLessons.App.Verbs;

/// <summary>Something that was typed cannot be used; the message is the one sentence that the user reads.</summary>
public sealed class BadInputException(string sentence) : Exception(sentence);
