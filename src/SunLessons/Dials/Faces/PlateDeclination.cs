namespace SunLessons.Dials.Faces;

/// <summary>
/// Towards which side a plate's lit face looks, reckoned from true SOUTH, WEST POSITIVE, from −180° (excluded) to +180° (included): 0° a face that looks
/// south, +90° one that looks west, −90° one that looks east, 180° one that looks north. The default value is a face that looks south.
/// </summary>
/// <remarks>
/// West is positive because hour angles are: a wall that declines to the west has its afternoon Sun, and its substyle hour angle is positive.
/// Old books write the same as "declines 15° from the south towards the west", and east with a word, not a sign. The rule is the same in both hemispheres.
/// The picture that goes with it is described at <see cref="Face"/>. Not to be confused with <see cref="SolarDeclination"/> and
/// <see cref="MagneticDeclination"/>. Reckoning from the south with west positive is common practice, no source.
/// </remarks>
public readonly record struct PlateDeclination
{
    private PlateDeclination(Angle angle) => Angle = angle;

    /// <summary>The declination as a signed angle from the south, west positive.</summary>
    public Angle Angle { get; }

    /// <summary>Degrees from the south, west positive, −180 (excluded) to +180.</summary>
    public double Degrees => Angle.Degrees;

    /// <summary>The true azimuth towards which the face looks.</summary>
    public Azimuth LooksTowards => Azimuth.FromDegrees(180.0 + Angle.Degrees);

    /// <summary>Makes a declination from degrees from the south, west positive; any finite number is reduced to half a turn of the south.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static PlateDeclination FromDegrees(double degrees) => new(Angle.FromDegrees(degrees).AroundZero());

    /// <summary>Makes a declination from the true azimuth towards which the face looks.</summary>
    public static PlateDeclination Towards(Azimuth azimuth) => FromDegrees(azimuth.Degrees - 180.0);

    /// <summary>Such as <c>-32.5°</c>.</summary>
    public override string ToString() => Angle.ToString();
}
