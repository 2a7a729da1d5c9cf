using SunLessons.Dials;
using SunLessons.Magnetism;
using NodaTime;

namespace SunLessons.Readings;

/// <summary>What a person knows of how the dial was set up. Where it stands by that can depend on place and date: see <see cref="At"/>.</summary>
public abstract record DialSetting
{
    private DialSetting()
    {
    }

    /// <summary>How the dial stands at a place and date, or why that cannot be told.</summary>
    public abstract SettingAnswer At(GeoPoint place, LocalDate date);

    /// <summary>Nothing is known: the dial is taken to stand level and true, and the doubt of that is not counted.</summary>
    public sealed record TakenAsRight : DialSetting
    {
        /// <inheritdoc/>
        public override SettingAnswer At(GeoPoint place, LocalDate date) =>
            new SettingAnswer.Known(DialStance.True, "the dial is taken to stand level and true") { IsMeasured = false };
    }

    /// <summary>The true azimuth of the north end of the noon line is known; the plate lies level.</summary>
    /// <param name="TrueAzimuth">Where the plate's north points, from true north through east.</param>
    public sealed record NoonLine(Azimuth TrueAzimuth) : DialSetting
    {
        /// <summary>The doubt in that azimuth, degrees of twist, or null when it is not counted.</summary>
        public ComponentSize? Doubt { get; init; }

        /// <inheritdoc/>
        public override SettingAnswer At(GeoPoint place, LocalDate date)
        {
            var stance = new DialStance(Azimuth.FromDegrees(0.0).TurnTo(TrueAzimuth), Angle.Zero, Angle.Zero);
            return new SettingAnswer.Known(stance, StanceInWords.Of(stance)) { DirectionDoubts = Doubt is null ? [] : [Doubt] };
        }
    }

    /// <summary>Twist and tilts are known; of a face that does not lie level, against how it was meant to stand.</summary>
    /// <param name="Stance">How the dial stands.</param>
    public sealed record Standing(DialStance Stance) : DialSetting
    {
        /// <summary>The doubt in its twist, degrees, or null when it is not counted.</summary>
        public ComponentSize? Doubt { get; init; }

        /// <inheritdoc/>
        public override SettingAnswer At(GeoPoint place, LocalDate date) =>
            new SettingAnswer.Known(Stance, StanceInWords.Of(Stance)) { DirectionDoubts = Doubt is null ? [] : [Doubt] };
    }

    /// <summary>The dial was turned until the needle lay over an engraved line; the plate lies level.</summary>
    /// <param name="Line">The line; one for 0° where there is none and the needle was brought over the noon line.</param>
    public sealed record NeedleOnLine(CompassLine Line) : DialSetting
    {
        /// <summary>The magnetic declination of place and date if it was measured, its own doubt not counted; null to take it from the field model.</summary>
        public MagneticDeclination? MeasuredDeclination { get; init; }

        /// <inheritdoc/>
        public override SettingAnswer At(GeoPoint place, LocalDate date) =>
            SettingByCompass.At(place, date, MeasuredDeclination, Line.SettingAt);
    }

    /// <summary>The dial's compass showed a figure when it was set; the plate lies level.</summary>
    /// <param name="Compass">The instrument, its sighting line along the noon line, northwards.</param>
    /// <param name="Reading">The figure read.</param>
    public sealed record CompassShowed(Compass Compass, CompassReading Reading) : DialSetting
    {
        /// <summary>The magnetic declination of place and date if it was measured, its own doubt not counted; null to take it from the field model.</summary>
        public MagneticDeclination? MeasuredDeclination { get; init; }

        /// <inheritdoc/>
        public override SettingAnswer At(GeoPoint place, LocalDate date) =>
            SettingByCompass.At(place, date, MeasuredDeclination, declination => Compass.SettingAt(Reading, declination));
    }
}
