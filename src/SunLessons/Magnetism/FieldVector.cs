namespace SunLessons.Magnetism;

/// <summary>
/// The Earth's magnetic field at a place, in nanotesla, in the local frame of the WGS 84 ellipsoid: true north, east, straight down.
/// The same shape carries a yearly change of the field, in nanotesla a year. The default value is no field.
/// </summary>
/// <param name="NorthNanotesla">Part along true north (X); negative where the needle's north end points southwards.</param>
/// <param name="EastNanotesla">Part along east (Y).</param>
/// <param name="DownNanotesla">Part straight down (Z); positive over most of the northern hemisphere.</param>
public readonly record struct FieldVector(double NorthNanotesla, double EastNanotesla, double DownNanotesla)
{
    /// <summary>Horizontal intensity (H), nanotesla, never negative: the pull that turns a compass needle.</summary>
    public double HorizontalNanotesla => Math.Sqrt(NorthNanotesla * NorthNanotesla + EastNanotesla * EastNanotesla);

    /// <summary>Total intensity (F), nanotesla, never negative.</summary>
    public double TotalNanotesla =>
        Math.Sqrt(NorthNanotesla * NorthNanotesla + EastNanotesla * EastNanotesla + DownNanotesla * DownNanotesla);

    /// <summary>
    /// How far the horizontal part points east of true north, east positive. It has no meaning where <see cref="HorizontalNanotesla"/>
    /// is zero (then this gives zero): look at the horizontal intensity first.
    /// </summary>
    public MagneticDeclination Declination => MagneticDeclination.FromAngle(Angle.FromRadians(Math.Atan2(EastNanotesla, NorthNanotesla)));

    /// <summary>Inclination (dip): how far the field points below the horizon, downwards positive, −90° to +90°.</summary>
    public Angle Inclination => Angle.FromRadians(Math.Atan2(DownNanotesla, HorizontalNanotesla));
}
