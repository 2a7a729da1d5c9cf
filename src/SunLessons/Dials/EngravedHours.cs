namespace SunLessons.Dials;

/// <summary>The first and the last hour line that a plate carries; a shadow outside them cannot be read.</summary>
/// <param name="First">The earliest reading on the plate.</param>
/// <param name="Last">The latest reading on the plate, not before <paramref name="First"/>.</param>
public readonly record struct EngravedHours(DialTime First, DialTime Last)
{
    /// <summary>Whether a reading lies on the engraved part, ends included.</summary>
    public bool Hold(DialTime reading) => reading.CompareTo(First) >= 0 && reading.CompareTo(Last) <= 0;
}
