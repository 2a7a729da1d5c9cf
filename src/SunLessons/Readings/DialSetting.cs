using System.Globalization;
using SunLessons.Dials;

namespace SunLessons.Readings;

/// <summary>What is known of how the dial was set up.</summary>
public abstract record DialSetting
{
    private protected DialSetting()
    {
    }

    /// <summary>How the dial stands by this.</summary>
    public abstract DialStance Stance { get; }

    /// <summary>In words, such as <c>the noon line points 14.0 degrees clockwise of true north</c>.</summary>
    public abstract string InWords { get; }

    /// <summary>The doubts in the dial's direction, each a component in degrees of twist.</summary>
    public virtual IReadOnlyList<ComponentSize> DirectionDoubts => [];

    /// <summary>Whether the setting was measured at all; if not, nothing is known of its doubts either.</summary>
    public virtual bool IsMeasured => true;

    /// <summary>Nothing is known: the dial is taken to stand level and true, and the doubt of that is not counted.</summary>
    public sealed record TakenAsRight : DialSetting
    {
        /// <inheritdoc/>
        public override DialStance Stance => DialStance.True;

        /// <inheritdoc/>
        public override string InWords => "the dial is taken to stand level and true";

        /// <inheritdoc/>
        public override bool IsMeasured => false;
    }

    /// <summary>The true azimuth of the north end of the noon line is known; the plate lies level.</summary>
    /// <param name="TrueAzimuth">Where the plate's north points, from true north through east.</param>
    public sealed record NoonLine(Azimuth TrueAzimuth) : DialSetting
    {
        /// <summary>The doubt in that azimuth, or null when it is not counted.</summary>
        public ComponentSize? Doubt { get; init; }

        /// <inheritdoc/>
        public override DialStance Stance => new(Azimuth.FromDegrees(0.0).TurnTo(TrueAzimuth), Angle.Zero, Angle.Zero);

        /// <inheritdoc/>
        public override string InWords => TwistInWords(Stance);

        /// <inheritdoc/>
        public override IReadOnlyList<ComponentSize> DirectionDoubts => Doubt is null ? [] : [Doubt];
    }

    /// <summary>Twist and tilts are known.</summary>
    /// <param name="Measured">How the dial stands.</param>
    public sealed record Standing(DialStance Measured) : DialSetting
    {
        /// <inheritdoc/>
        public override DialStance Stance => Measured;

        /// <inheritdoc/>
        public override string InWords => TwistInWords(Measured) + TiltInWords(Measured.EastEdgeRaised, "east") + TiltInWords(Measured.NorthEdgeRaised, "north");
    }

    /// <summary>The words for a twist.</summary>
    internal static string TwistInWords(DialStance stance)
    {
        var degrees = Math.Round(stance.TwistClockwise.AroundZero().Degrees, 1, MidpointRounding.AwayFromZero);
        return degrees == 0.0
            ? "the noon line points to true north"
            : $"the noon line points {Number(Math.Abs(degrees))} degrees {(degrees > 0.0 ? "clockwise (east)" : "anticlockwise (west)")} of true north";
    }

    private static string TiltInWords(Angle raised, string edge)
    {
        var degrees = Math.Round(raised.Degrees, 1, MidpointRounding.AwayFromZero);
        return degrees == 0.0 ? "" : $", its {edge} edge {Number(Math.Abs(degrees))} degrees too {(degrees > 0.0 ? "high" : "low")}";
    }

    private static string Number(double degrees) => degrees.ToString("0.0", CultureInfo.InvariantCulture);
}
