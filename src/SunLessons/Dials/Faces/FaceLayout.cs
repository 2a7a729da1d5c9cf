namespace SunLessons.Dials.Faces;

/// <summary>
/// A face laid out for a latitude: where the style stands and where the hour lines run. Immutable and safe between threads.
/// </summary>
/// <remarks>
/// No closed form is used: the sky of the latitude is turned into the face's own axes, and style, lines and shadows are cast there by the same two steps as
/// every reading of <see cref="ForwardModel"/>. Left out: refraction, the Sun's width, the thickness of the style (see <see cref="ThickStyle"/>).
/// Measured against the handbooks' exact forms on 60 random faces (style height, substyle, difference of longitude, meridian line): within 6e-10 degrees,
/// the grid's last printed digit; against 300 ray-traced nodus shadows: within the 1e-7 degree to which their Sun is printed.
/// </remarks>
public sealed class FaceLayout
{
    // A style nearer to the plate than this, radians (0.02"), is taken as parallel to it: its centre would lie 10 million nodus heights away.
    internal const double ParallelRadians = 1e-7;

    // A style nearer to the normal than this, radians, has no substyle that could be told from rounding.
    private const double SquareRadians = 1e-9;

    private FaceLayout(Face face, Latitude latitude)
    {
        Face = face;
        Latitude = latitude;
        Axes = FaceAxes.Of(face);
        Sky = Axes.Sky(latitude);
        IsParallel = Math.Abs(Sky.Pole.Z) < ParallelRadians;

        // The part of the axis over the face; on a polar face the part towards the north.
        Style = Sky.Pole.Z < 0.0 && !IsParallel ? new Vector3(-Sky.Pole.X, -Sky.Pole.Y, -Sky.Pole.Z) : Sky.Pole;
    }

    /// <summary>The face.</summary>
    public Face Face { get; }

    /// <summary>The latitude it is laid out for, north positive.</summary>
    public Latitude Latitude { get; }

    /// <summary>
    /// The style's angle over the plate, −90° to +90°: positive when the NORTH pole stands over the face, negative when the south pole does, 0° when the style
    /// is parallel to the plate. A southern wall at 42.24° N has −47.76°.
    /// </summary>
    public Angle StyleHeight => Angle.FromRadians(Math.Atan2(Sky.Pole.Z, Math.Sqrt(Sky.Pole.X * Sky.Pole.X + Sky.Pole.Y * Sky.Pole.Y)));

    /// <summary>The trade's name for the face at this latitude.</summary>
    public FaceKind Kind
    {
        get
        {
            // Rounding only: a face meant as direct or upright is so to a billionth of a degree.
            const double Same = 1e-9;
            var i = Face.Inclination.Degrees;
            var d = Math.Abs(Face.Declination.Degrees);
            var direct = d < Same || d > 180.0 - Same;
            return this switch
            {
                _ when IsSquare => FaceKind.Equatorial,
                _ when i < Same => FaceKind.Horizontal,
                _ when i > 180.0 - Same => FaceKind.Overhead,
                { IsParallel: true } => FaceKind.Polar,
                _ when Math.Abs(i - 90.0) < Same => direct ? FaceKind.VerticalDirect : FaceKind.VerticalDeclining,
                _ => direct ? FaceKind.Inclining : FaceKind.IncliningDeclining,
            };
        }
    }

    /// <summary>Which way the numbers run.</summary>
    public NumbersRun Numbers => IsParallel ? NumbersRun.AcrossTheFace : Sky.Pole.Z > 0.0 ? NumbersRun.Clockwise : NumbersRun.Anticlockwise;

    /// <summary>The line under the style and its hour angle, the difference of longitude.</summary>
    public Substyle Substyle => IsSquare
        ? new Substyle.None("The style stands square on a face parallel to the equator; draw it at the centre and start from any hour line.")
        : new Substyle.Stands(
            Angle.FromRadians(Math.Atan2(Style.X, Style.Y)).AroundZero(),
            HourAngle.FromAngle(Angle.FromRadians(Sky.HourAngleOf(new Vector3(0.0, 0.0, 1.0)))));

    /// <summary>
    /// Where the style through the nodus meets the plate, in nodus heights from the foot of the nodus; null on a polar face, whose style never meets it.
    /// </summary>
    public FacePoint? Centre => IsParallel ? null : new FacePoint(-Style.X / Style.Z, -Style.Y / Style.Z);

    /// <summary>The line of solar noon.</summary>
    public FaceHourLine NoonLine => LineFor(DialTime.FromHours(12.0));

    internal FaceAxes Axes { get; }

    /// <summary>The sky of the latitude along right, up and normal.</summary>
    internal PolarFrame Sky { get; }

    /// <summary>The raised part of the axis along right, up and normal.</summary>
    internal Vector3 Style { get; }

    internal bool IsParallel { get; }

    private bool IsSquare => Style.X * Style.X + Style.Y * Style.Y < SquareRadians * SquareRadians;

    /// <summary>Lays a face out for a latitude. Any face has a layout at any latitude, poles and equator included.</summary>
    public static FaceLayout Of(Face face, Latitude latitude) => new(face, latitude);

    /// <summary>
    /// The line for local APPARENT time, whether or not the Sun ever lights it (see <see cref="LitHours"/>); for other numberings see <see cref="HourNumbering"/>.
    /// </summary>
    public FaceHourLine LineFor(DialTime time)
    {
        var h = time.HourAngle.Angle;
        var sun = new Vector3(
            h.Sin * Sky.West.X + h.Cos * Sky.Meridian.X,
            h.Sin * Sky.West.Y + h.Cos * Sky.Meridian.Y,
            h.Sin * Sky.West.Z + h.Cos * Sky.Meridian.Z);
        if (!IsParallel)
        {
            // The Sun of the equinox serves for its whole hour plane; multiplied through by its height over the plate, the shadow has a direction
            // even where that height is negative.
            var shadow = ForwardModel.ShadowOnPlate(Style, sun);
            return new FaceHourLine.FromCentre(Centre!.Value, Angle.FromRadians(Math.Atan2(shadow.X, shadow.Y)).AroundZero());
        }

        // Nearer than a nanoradian the line would lie a billion style heights away.
        if (sun.Z < 1e-9)
        {
            return new FaceHourLine.None(
                $"At {time} the Sun's hour plane never cuts this polar face in front of its style; choose an hour less than 6 from that of the substyle.");
        }

        var through = new FacePoint(-sun.X / sun.Z, -sun.Y / sun.Z);
        return new FaceHourLine.BesideStyle(
            through, Angle.FromRadians(Math.Atan2(Style.X, Style.Y)).AroundZero(), through.Right * Style.Y - through.Up * Style.X);
    }

    /// <summary>The straight line that bears a number of another numbering: longitude built in, equation of time not.</summary>
    public FaceHourLine LineFor(DialTime number, HourNumbering numbering)
    {
        ArgumentNullException.ThrowIfNull(numbering);
        return LineFor(numbering.ApparentAt(number));
    }

    /// <summary>The shadow of the nodus when the Sun stands in a direction and the face stands as designed.</summary>
    public NodusShadow ShadowOfNodus(LocalDirection sun)
    {
        if (sun.Up <= 0.0)
        {
            return new NodusShadow.None(NoReading.SunBelowHorizon, FaceModel.BelowHorizon(sun));
        }

        var onFace = Axes.ToFace(sun.ToVector());
        return onFace.Z <= 0.0
            ? new NodusShadow.None(NoReading.SunBehindPlate, FaceModel.BehindPlate(onFace))
            : new NodusShadow.At(new FacePoint(-onFace.X / onFace.Z, -onFace.Y / onFace.Z));
    }

    /// <summary>The shadow of the nodus at an hour angle and declination of the Sun, the face standing as designed at its own latitude.</summary>
    public NodusShadow ShadowOfNodus(HourAngle hourAngle, SolarDeclination declination) =>
        ShadowOfNodus(LocalDirection.FromHourAngle(hourAngle, declination, Latitude));
}
