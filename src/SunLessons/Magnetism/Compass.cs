namespace SunLessons.Magnetism;

/// <summary>
/// A compass as found on a dial or beside it: how it is built, which way its card is graduated, and what it reads too much.
/// Turns a reading into the true azimuth of its sighting line (on a dial: of the plate's noon line, northwards) and back.
/// </summary>
/// <remarks>
/// The four kinds, with the sighting line pointing 30° east of magnetic north:
/// needle over a fixed card graduated clockwise reads 330; the same graduated anticlockwise reads 30;
/// a moving card graduated clockwise reads 30 at the lubber line; the same graduated anticlockwise reads 330.
/// </remarks>
public sealed record Compass
{
    /// <summary>Describes an instrument.</summary>
    /// <param name="build">What turns and where it is read.</param>
    /// <param name="graduation">Which way the figures grow, seen from above.</param>
    /// <param name="indexError">
    /// What the instrument reads too much, in figures of its own card: reading minus what a faultless one would show. A needle whose
    /// magnetism was reversed has an index error of 180°.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A build or graduation that is none of the named ones.</exception>
    public Compass(CompassBuild build, CompassGraduation graduation, Angle indexError = default)
    {
        // Refuses an unknown kind at once, not at the first reading.
        _ = CompassSigns.OfFigures(build, graduation);
        Build = build;
        Graduation = graduation;
        IndexError = indexError.AroundZero();
    }

    /// <summary>What turns and where it is read.</summary>
    public CompassBuild Build { get; }

    /// <summary>Which way the figures grow, seen from above.</summary>
    public CompassGraduation Graduation { get; }

    /// <summary>Reading minus what a faultless instrument would show, from −180° (excluded) to +180°.</summary>
    public Angle IndexError { get; }

    /// <summary>The magnetic bearing of the sighting line at a reading.</summary>
    public CompassBearing BearingAt(CompassReading reading) => CompassSigns.MagneticFromReading(reading, Build, Graduation, IndexError);

    /// <summary>The reading at a magnetic bearing of the sighting line.</summary>
    public CompassReading ReadingAt(CompassBearing bearing) => CompassSigns.ReadingFromMagnetic(bearing, Build, Graduation, IndexError);

    /// <summary>The true azimuth of the sighting line at a reading, where the magnetic declination is known.</summary>
    public Azimuth AzimuthAt(CompassReading reading, MagneticDeclination declination) =>
        CompassSigns.TrueFromMagnetic(BearingAt(reading), declination);

    /// <summary>The reading to look for when the sighting line shall have a true azimuth.</summary>
    public CompassReading ReadingAt(Azimuth azimuth, MagneticDeclination declination) =>
        ReadingAt(CompassSigns.MagneticFromTrue(azimuth, declination));

    /// <summary>
    /// How a dial stands whose noon line is the sighting line, when its compass shows a reading. To stand right the reading must be
    /// <see cref="ReadingAt(Azimuth, MagneticDeclination)"/> of north.
    /// </summary>
    public CompassSetting SettingAt(CompassReading reading, MagneticDeclination declination) => new(AzimuthAt(reading, declination));

    /// <summary>
    /// The index error that follows from sighting something of known true azimuth (the Sun's shadow, a chart's landmark): what the compass
    /// read minus what a faultless one of its kind would have read.
    /// </summary>
    public static Angle IndexErrorFrom(CompassBuild build, CompassGraduation graduation, CompassReading reading, Azimuth azimuth, MagneticDeclination declination)
    {
        var faultless = new Compass(build, graduation).ReadingAt(azimuth, declination);
        return (reading.Figure - faultless.Figure).AroundZero();
    }
}
