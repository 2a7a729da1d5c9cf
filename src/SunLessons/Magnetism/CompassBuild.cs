namespace SunLessons.Magnetism;

/// <summary>What turns and what stands still in a compass, and so where it is read.</summary>
public enum CompassBuild
{
    /// <summary>
    /// The card is fixed in the case with its 0 at the sighting line; a bare needle swings above it and is read at its NORTH end.
    /// Picture: turn the case to the right and the needle stays behind, that is, it moves to the left over the card.
    /// </summary>
    NeedleOverFixedCard,

    /// <summary>
    /// The magnet is fixed under the card, so that the card's 0 seeks magnetic north; it is read at the lubber line, a mark on the case
    /// at the sighting line. Picture: turn the case to the right and the mark travels to the right over a card that stays where it is.
    /// </summary>
    CardReadAtLubberLine,
}
