namespace SunLessons.Dials.Faces;

/// <summary>
/// A level dial with hour points on an ellipse and an upright gnomon that is moved along the date line: it tells the time by the Sun's azimuth. Lengths are
/// in halves of the ellipse's length from east to west. Immutable.
/// </summary>
/// <remarks>
/// It is the equatorial ring of a latitude dropped straight down on the plate, and the point of its axis where the nodus of the day must be dropped with it.
/// Both hemispheres; south of the equator noon is the south point. At a pole the ellipse is a circle and the date line a point; at the equator the ellipse
/// is a line and cannot be read. Measured: hour points, date line and foci within 6e-10 of the handbooks' closed forms at four latitudes (their
/// printed digits); the hour from ERFA's azimuths in 300 random places and hours within 1e-5 minutes wherever the shadow does not graze the ellipse.
/// Left out: refraction, which moves no azimuth.
/// </remarks>
/// <param name="MadeFor">The latitude it is laid out for, north positive.</param>
public sealed record AnalemmaticDial(Latitude MadeFor)
{
    // A flatter ellipse than this is a line to within rounding.
    private const double FlatEllipse = 1e-9;

    /// <summary>Half the ellipse's width from north to south, in halves of its length: 0 at the equator, 1 at the poles.</summary>
    public double HalfWidth => Math.Abs(HourPoint(DialTime.FromHours(12.0)).North);

    /// <summary>The distance of each focus from the centre, east and west of it, in halves of the length: to draw the ellipse with a string.</summary>
    public double FocusDistance => Math.Sqrt(1.0 - HalfWidth * HalfWidth);

    /// <summary>The point of an hour of local apparent time: where the ring's shadow-side point for that hour drops down.</summary>
    public PlatePoint HourPoint(DialTime time)
    {
        var h = time.HourAngle.Angle;
        var sun = PolarFrame.At(MadeFor).ToLocal(h.Sin, h.Cos, 0.0);
        return new PlatePoint(-sun.X, -sun.Y);
    }

    /// <summary>The point of the hour line that bears a number with the longitude built in (and the equation of time of one date, if given).</summary>
    public PlatePoint HourPoint(DialTime number, HourNumbering numbering, EquationOfTime equationOfTime = default)
    {
        ArgumentNullException.ThrowIfNull(numbering);
        return HourPoint(numbering.ApparentAt(number, equationOfTime));
    }

    /// <summary>
    /// Where the gnomon stands for a solar declination: that far to the NORTH of the centre (negative south), on the short axis.
    /// </summary>
    public double DateOffsetNorth(SolarDeclination declination) => PolarFrame.At(MadeFor).Pole.Y * declination.Angle.Tan;

    /// <summary>What the dial shows when its gnomon is set for a declination and the Sun stands in a direction.</summary>
    /// <param name="setFor">The declination at which the gnomon stands on the date line; a wrong one is a fault like another.</param>
    /// <param name="stance">How the whole dial stands, gnomon and plate as one solid thing.</param>
    /// <param name="sun">The Sun's direction along east, north and up.</param>
    public AnalemmaticReading Read(SolarDeclination setFor, DialStance stance, LocalDirection sun)
    {
        if (sun.Up <= 0.0)
        {
            return new AnalemmaticReading.Nothing(NoReading.SunBelowHorizon, FaceModel.BelowHorizon(sun));
        }

        var onPlate = stance.ToPlate(sun.ToVector());
        if (onPlate.Z <= 0.0)
        {
            return new AnalemmaticReading.Nothing(NoReading.SunBehindPlate, FaceModel.BehindPlate(onPlate));
        }

        var minor = HourPoint(DialTime.FromHours(12.0)).North;
        if (Math.Abs(minor) < FlatEllipse)
        {
            return new AnalemmaticReading.Nothing(
                NoReading.OffTheScale, "The ellipse of an analemmatic dial for latitude 0 degrees is a straight line; choose another kind of dial there.");
        }

        // The shadow runs from the gnomon's foot against the Sun; with y measured in half widths the ellipse is a circle.
        var length = Math.Sqrt(onPlate.X * onPlate.X + onPlate.Y * onPlate.Y);
        if (length < FlatEllipse)
        {
            return new AnalemmaticReading.Nothing(NoReading.OffTheScale, "The Sun stands straight over the gnomon, which throws no shadow; wait a few minutes.");
        }

        var foot = DateOffsetNorth(setFor) / minor;
        var (dx, dy) = (-onPlate.X / length, -onPlate.Y / length / minor);

        // (t dx)² + (foot + t dy)² = 1, t above 0.
        var a = dx * dx + dy * dy;
        var b = foot * dy;
        var c = foot * foot - 1.0;
        var root = b * b - a * c;
        var times = root < 0.0
            ? []
            : new[] { (-b - Math.Sqrt(root)) / a, (-b + Math.Sqrt(root)) / a }
                .Where(t => t > 0.0)
                .Select(t => DialTime.FromHourAngle(HourAngle.FromAngle(Angle.FromRadians(Math.Atan2(t * dx, foot + t * dy)))))
                .ToList();
        return times.Count > 0
            ? new AnalemmaticReading.Shows(times)
            : new AnalemmaticReading.Nothing(
                NoReading.OffTheScale, "The gnomon's shadow does not cross the ellipse; set the gnomon to the date.");
    }

    /// <summary>What the dial shows at an hour angle and declination of the Sun, at a latitude, its gnomon set for the true declination.</summary>
    public AnalemmaticReading Read(DialStance stance, Latitude place, HourAngle hourAngle, SolarDeclination declination) =>
        Read(declination, stance, LocalDirection.FromHourAngle(hourAngle, declination, place));

    /// <summary>
    /// All true hour angles at which the dial shows a time, in the order of the day: none, one or two. Each is kept only if the dial, run forwards there, shows it.
    /// </summary>
    /// <param name="setFor">The declination at which the gnomon stands on the date line.</param>
    /// <param name="stance">How the whole dial stands.</param>
    /// <param name="place">The latitude of the place where it stands.</param>
    /// <param name="declination">The Sun's declination at that time.</param>
    /// <param name="shown">What the dial shows.</param>
    public IReadOnlyList<HourAngle> HourAngles(
        SolarDeclination setFor, DialStance stance, Latitude place, SolarDeclination declination, DialTime shown)
    {
        // The upright gnomon and the hour point span the plane in which the Sun was.
        var point = HourPoint(shown);
        return DayCircle.WhereItShows(
            stance.ToWorld(new Vector3(point.North - DateOffsetNorth(setFor), -point.East, 0.0)),
            place,
            declination,
            shown,
            hourAngle => Read(setFor, stance, LocalDirection.FromHourAngle(hourAngle, declination, place)) is AnalemmaticReading.Shows shows ? shows.Times : []);
    }
}
