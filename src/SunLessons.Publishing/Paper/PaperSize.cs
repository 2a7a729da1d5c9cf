namespace SunLessons.Publishing.Paper;

/// <summary>A size of paper that sheets are made for.</summary>
/// <param name="Name">As people call it.</param>
/// <param name="Suffix">Its part of a file's name; also the name that style sheets know.</param>
internal sealed record PaperSize(string Name, string Suffix)
{
    /// <summary>A4 (ISO 216) and Letter (ANSI A): together what nearly all printers of the world hold.</summary>
    public static IReadOnlyList<PaperSize> All { get; } = [new("A4", "a4"), new("Letter", "letter")];
}
