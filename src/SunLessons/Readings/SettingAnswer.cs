using SunLessons.Dials;

namespace SunLessons.Readings;

/// <summary>How a dial stands, or why that cannot be told.</summary>
public abstract record SettingAnswer
{
    private SettingAnswer()
    {
    }

    /// <summary>The dial stands so.</summary>
    /// <param name="Stance">Twist and tilts.</param>
    /// <param name="InWords">Such as <c>the noon line points 14.0 degrees clockwise (east) of true north</c>.</param>
    public sealed record Known(DialStance Stance, string InWords) : SettingAnswer
    {
        /// <summary>The doubts in the dial's direction, each a component in degrees of twist.</summary>
        public IReadOnlyList<ComponentSize> DirectionDoubts { get; init; } = [];

        /// <summary>Whether the setting was measured at all; if not, nothing is known of its doubts either.</summary>
        public bool IsMeasured { get; init; } = true;

        /// <summary>A warning in one sentence, such as a weak field, or null.</summary>
        public string? Caution { get; init; }
    }

    /// <summary>It cannot be told.</summary>
    /// <param name="Sentence">Why, and what to do instead.</param>
    public sealed record Unknown(string Sentence) : SettingAnswer;
}
