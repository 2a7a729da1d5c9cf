using System.Globalization;

namespace SunLessons.Magnetism;

/// <summary>
/// The magnetic declination of one place by year, with the model named on every point, for as long as the models in use
/// reach (<see cref="MagneticModels.InUse"/>): 1900.0 to 2030.0, or later where a later model was added. Immutable.
/// </summary>
public sealed class DriftCurve
{
    private const int MostPoints = 100_000;

    private readonly MagneticModels _models;

    private DriftCurve(MagneticModels models, GeoPoint point, IReadOnlyList<DriftPoint> points)
    {
        _models = models;
        Point = point;
        Points = points;
    }

    /// <summary>The place.</summary>
    public GeoPoint Point { get; }

    /// <summary>The points, in order of time; the first and last year asked for are always among them.</summary>
    public IReadOnlyList<DriftPoint> Points { get; }

    /// <summary>
    /// How much the curve jumps at a change of model because the newer model answers: its declination minus the older one's at that very
    /// moment, eastwards positive. Two models of one field: the jump shows their disagreement, not a movement of the needle.
    /// </summary>
    /// <remarks>Measured at 2025.0 on a grid of two degrees: at most 0.12° where H is 6000 nT or more; at the eight towns of the lessons at most 0.03°.</remarks>
    public IReadOnlyList<(double DecimalYear, Angle Jump)> Jumps => _models.Rule
        .Zip(_models.Rule.Skip(1))
        .Select(pair => (pair.Second.ValidFromYear, Jump: JumpBetween(pair.First, pair.Second)))
        .ToList();

    /// <summary>Computes the curve at even steps of years.</summary>
    /// <param name="point">The place.</param>
    /// <param name="fromYear">First decimal year, 1900.0 or later.</param>
    /// <param name="toYear">Last decimal year, not before the first; null for the last that the models know (2030.0 for those built in).</param>
    /// <param name="stepYears">Step in years, more than zero; the last step is shortened to end at <paramref name="toYear"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Years outside the models, the wrong way round, or a step that is not positive.</exception>
    public static DriftCurve For(GeoPoint point, double fromYear = 1900.0, double? toYear = null, double stepYears = 1.0)
    {
        var models = MagneticModels.InUse;
        var lastYear = toYear ?? models.LastYear;
        if (!(fromYear >= models.FirstYear && lastYear <= models.LastYear && fromYear <= lastYear))
        {
            throw new ArgumentOutOfRangeException(
                nameof(fromYear),
                $"Years {Text(fromYear)} to {Text(lastYear)} are outside {Text(models.FirstYear)} to {Text(models.LastYear)} or the wrong way round. Give the earlier year first, inside that range.");
        }

        if (!(stepYears > 0.0) || (lastYear - fromYear) / stepYears > MostPoints)
        {
            throw new ArgumentOutOfRangeException(
                nameof(stepYears),
                $"A step of {Text(stepYears)} years cannot be used from {Text(fromYear)} to {Text(lastYear)}: it must be more than 0 and give at most {MostPoints} points. Write 1 for a point a year.");
        }

        var points = new List<DriftPoint>();
        for (var k = 0; ; k++)
        {
            // Counted from the start, so that rounding does not pile up.
            var year = fromYear + k * stepYears;
            if (year >= lastYear)
            {
                break;
            }

            points.Add(At(point, year));
        }

        points.Add(At(point, lastYear));
        return new DriftCurve(models, point, points);
    }

    private static DriftPoint At(GeoPoint point, double year)
    {
        // The range was checked above, so a model answers.
        var known = (NorthAnswer.Known)MagneticField.At(point, year);
        return new DriftPoint(year, known.Declination, known.StandardUncertainty, known.ModelName, known.Zone);
    }

    private Angle JumpBetween(ModelSpan older, ModelSpan newer)
    {
        var year = newer.ValidFromYear;
        var before = older.Model.At(Point, year).Field.Declination;
        var after = newer.Model.At(Point, year).Field.Declination;
        return (after.Angle - before.Angle).AroundZero();
    }

    private static string Text(double value) => value.ToString("0.0##", CultureInfo.InvariantCulture);
}
