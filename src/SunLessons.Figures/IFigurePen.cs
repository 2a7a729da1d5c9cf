using System.Text.Json.Nodes;

namespace SunLessons.Figures;

/// <summary>
/// Writes figures in the form that a page draws. Lesson cells know only this: which writer it is, and whether it is shipped at all, is decided by where they run.
/// </summary>
public interface IFigurePen
{
    /// <summary>The MIME type of <see cref="Whole"/> as an output.</summary>
    string MimeType { get; }

    /// <summary>The whole figure, as its page draws it.</summary>
    JsonObject Whole(Figure figure);

    /// <summary>Begins to tell changes to a page that was given this figure whole.</summary>
    IFigureChanges After(Figure sent);
}

/// <summary>What a page must change in a figure that it drew, figure after figure. Not safe for several threads at once.</summary>
public interface IFigureChanges
{
    /// <summary>The message for the next figure; an empty one when nothing changed; null when the whole figure must be sent and changes begun anew.</summary>
    JsonObject? Next(Figure figure);
}
