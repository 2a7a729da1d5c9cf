using SunLessons.Dials;
using SunLessons.Uncertainty;

namespace SunLessons.Readings;

/// <summary>
/// The uncertainty of a clock time read from a dial: each component's size times what the forward model says it does to the answer.
/// </summary>
/// <remarks>
/// The dial shows F(H, x) for a true hour angle H and a fault x; the reading is given, so a change of x by dx moves the answer by
/// −(∂F/∂x)/(∂F/∂H) dx. Both derivatives are central differences of the model; where the dial goes dark within the step, one-sided ones.
/// </remarks>
internal sealed class ReadingBudget
{
    // Degrees. Small against every component, large against rounding.
    private const double Step = 1e-3;

    private readonly PlateDial _dial;
    private readonly DialStance _stance;
    private readonly Latitude _place;
    private readonly HourAngle _hourAngle;
    private readonly SolarDeclination _declination;
    private readonly double _perHourAngle;
    private readonly List<(StepName? Step, BudgetLine Line)> _lines = [];

    private ReadingBudget(PlateDial dial, DialStance stance, Latitude place, HourAngle hourAngle, SolarDeclination declination)
    {
        _dial = dial;
        _stance = stance;
        _place = place;
        _hourAngle = hourAngle;
        _declination = declination;
        _perHourAngle = Slope(x => Shown(dial, stance, place, x, Angle.Zero));
    }

    /// <summary>Lines with the step each belongs to; null for the reading itself.</summary>
    public IReadOnlyList<(StepName? Step, BudgetLine Line)> Lines => _lines;

    public static ReadingBudget Of(DialAsSet dial, GeoPoint place, HourAngle hourAngle, SolarDeclination declination)
    {
        var budget = new ReadingBudget(dial.Dial, dial.Stance, place.Latitude, hourAngle, declination);
        budget.AddReading(dial.IsFaultless);
        if (!dial.IsFaultless)
        {
            budget.AddScale(dial.Profile);
            budget.AddSetting(dial.Setting);
        }

        // 4 minutes of time to a degree; a place further east has an earlier clock.
        budget.Add(StepName.Longitude, ReadingComponents.LongitudeOfPlace, -4.0);
        if (dial.Profile.DateByTable)
        {
            budget.Add(StepName.Date, ReadingComponents.DateTable, 1.0);
        }

        return budget;
    }

    public double StandardUncertainty(StepName? step) =>
        Math.Sqrt(_lines.Where(l => l.Step == step).Sum(l => l.Line.Contribution * l.Line.Contribution));

    private void AddReading(bool faultless)
    {
        // What the eye does on the plate is in minutes of the scale; the answer moves by its inverse slope.
        var perReading = faultless ? 1.0 : 1.0 / _perHourAngle;
        Add(null, ReadingComponents.PlateReading, perReading);

        // The blur is the Sun's own width across the hour plane: more minutes when the Sun is away from the equator.
        Add(null, ReadingComponents.ShadowEdge, 1.0 / _declination.Angle.Cos);
    }

    private void AddScale(DialProfile profile)
    {
        if (_dial.IsLevel)
        {
            AddMaking(profile);
        }

        // The dial was made or set for the latitude as given; if that is off, only the sky differs.
        Add(StepName.Scale, ReadingComponents.LatitudeOfPlace, Answer(Slope(x =>
            Shown(_dial, _stance, Shifted(_place, x), 0.0, Angle.Zero))));
        Add(StepName.Scale, ReadingComponents.Refraction(AirLifts(Sun(0.0, _place).Altitude)), Answer(Slope(x =>
            Shown(_dial, _stance, _place, 0.0, Angle.FromDegrees(x)))));
    }

    /// <summary>What the maker of a level plate may have missed, and a scale that is not the place's own.</summary>
    private void AddMaking(DialProfile profile)
    {
        var flat = _dial.Flat;
        double? With(Latitude scale, Latitude style) => Shown(new PlateDial(new FlatDial(scale, style), null), _stance, _place, 0.0, Angle.Zero);

        // An hour line engraved too far clockwise by dx makes the dial show less: the reading there is t(angle − dx).
        Add(StepName.Scale, ReadingComponents.HourLineEngraving, Answer(-ReadingPerShadowAngle()));
        Add(StepName.Scale, ReadingComponents.StyleHeight, Answer(Slope(x => With(flat.ScaleLatitude, Shifted(flat.StyleLatitude, x)))));
        if (profile.NearestOfScalesApart is { } spacing)
        {
            // A scale for x degrees more, its style with it unless that is set for the place.
            Add(StepName.Scale, ReadingComponents.NearestScale(spacing), Answer(Slope(x => With(
                Shifted(flat.ScaleLatitude, x), profile.Style == StyleSet.ForPlace ? flat.StyleLatitude : Shifted(flat.StyleLatitude, x)))));
        }
    }

    private void AddSetting(SettingAnswer.Known setting)
    {
        if (!setting.IsMeasured)
        {
            return;
        }

        var perTwist = Answer(Slope(x => Shown(_dial, _stance with { TwistClockwise = Plus(_stance.TwistClockwise, x) }, _place, 0.0, Angle.Zero)));
        foreach (var doubt in setting.DirectionDoubts)
        {
            Add(StepName.Setting, doubt, perTwist);
        }

        if (!_dial.IsLevel)
        {
            return;
        }

        Add(StepName.Setting, ReadingComponents.LevelEastWest, Answer(Slope(x =>
            Shown(_dial, _stance with { EastEdgeRaised = Plus(_stance.EastEdgeRaised, x) }, _place, 0.0, Angle.Zero))));
        Add(StepName.Setting, ReadingComponents.LevelNorthSouth, Answer(Slope(x =>
            Shown(_dial, _stance with { NorthEdgeRaised = Plus(_stance.NorthEdgeRaised, x) }, _place, 0.0, Angle.Zero))));
    }

    /// <summary>Minutes of the answer for one degree of a fault, from degrees of the reading for one degree of it.</summary>
    private double Answer(double readingPerFault) => -4.0 * readingPerFault / _perHourAngle;

    private void Add(StepName? step, ComponentSize size, double sensitivity)
    {
        var quantity = Quantity.Of(size.Name, size.Unit == ComponentUnit.Degrees ? "degrees" : "minutes", 0.0, size.Size, size.Shape);
        _lines.Add((step, new BudgetLine(quantity, sensitivity)));
    }

    /// <summary>The reading, degrees from noon, with the Sun moved on in hour angle by so many degrees and lifted by an angle; null in the dark.</summary>
    private double? Shown(PlateDial dial, DialStance stance, Latitude place, double later, Angle lifted)
    {
        var sun = Sun(later, place);
        if (lifted != Angle.Zero)
        {
            sun = LocalDirection.FromAzimuthAltitude(sun.Azimuth, Altitude.FromDegrees(Math.Min(90.0, sun.Altitude.Degrees + lifted.Degrees)));
        }

        return dial.Shown(stance, sun)?.HourAngle.Degrees;
    }

    private LocalDirection Sun(double later, Latitude place) =>
        LocalDirection.FromHourAngle(HourAngle.FromDegrees(_hourAngle.Degrees + later), _declination, place);

    /// <summary>How the reading moves with a shift of the shadow on the plate, degrees for a degree: from the hour lines about the reading.</summary>
    private double ReadingPerShadowAngle()
    {
        if (_dial.Shown(_stance, Sun(0.0, _place)) is not { } shown)
        {
            return 0.0;
        }

        double Line(double later) => HourLines.At(_dial.Flat.ScaleLatitude, DialTime.FromHourAngle(
            HourAngle.FromDegrees(shown.HourAngle.Degrees + later))).Clockwise.Degrees;
        return 2.0 * Step / Angle.FromDegrees(Line(+Step) - Line(-Step)).AroundZero().Degrees;
    }

    private static double Slope(Func<double, double?> shown)
    {
        var (low, high) = (-Step, +Step);
        var (below, above) = (shown(low), shown(high));
        if (below is null)
        {
            (low, below) = (0.0, shown(0.0));
        }

        if (above is null)
        {
            (high, above) = (0.0, shown(0.0));
        }

        return below is { } a && above is { } b && high > low ? Angle.FromDegrees(b - a).AroundZero().Degrees / (high - low) : 0.0;
    }

    private static Latitude Shifted(Latitude latitude, double degrees) =>
        Latitude.FromDegrees(Math.Clamp(latitude.Degrees + degrees, -90.0, 90.0));

    private static Angle Plus(Angle angle, double degrees) => angle + Angle.FromDegrees(degrees);

    // Refraction to a tenth of itself is enough to size a doubt: 1 arcminute / tan(h + 7.3/(h + 4.4)), Bennett 1982 as in Meeus chapter 16 (from memory).
    private static Angle AirLifts(Altitude altitude)
    {
        var h = Math.Max(0.0, altitude.Degrees);
        return Angle.FromArcSeconds(Math.Max(0.0, 60.0 / Math.Tan((h + 7.31 / (h + 4.4)) * (Math.PI / 180.0))));
    }
}
