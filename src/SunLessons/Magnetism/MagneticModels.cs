using System.Globalization;

namespace SunLessons.Magnetism;

/// <summary>
/// Which field model answers when: the one place where that rule is written down. Immutable; <see cref="InUse"/> is the set that every answer here comes from.
/// </summary>
public sealed class MagneticModels
{
    // World Magnetic Models are issued for five years from their epoch (NOAA and BGS, every technical report since 1990, from memory).
    private const double YearsOfAWorldModel = 5.0;

    // The dipole moved by less than 500 nT in any five years since 1900 (IGRF-14): a file further off holds something else.
    private const double MostDipoleStepNanotesla = 1000.0;

    private static MagneticModels? _inUse;

    private MagneticModels(IReadOnlyList<ModelSpan> rule) => Rule = rule;

    /// <summary>
    /// The models of this library. IGRF-14 from 1900.0 up to (not including) 2025.0; WMM2025 from 2025.0 to 2030.0 inclusive.
    /// IGRF-14 carries a forecast to 2030 of its own, which is not used: two answers for one day would have to be explained away.
    /// </summary>
    public static MagneticModels BuiltIn { get; } = new(
    [
        new(
            1900.0,
            2025.0,
            () => GeomagneticModel.Igrf14,
            "IGRF-14",
            DeclinationErrors.Igrf,
            "Beggan 2022, Earth, Planets and Space 74:17: 68.3 % of ground stations within 87 nT north and 73 nT east, 1980 to 2021; standard deviation, for budgets, 144 and 136 nT"),
        new(
            2025.0,
            2030.0,
            () => GeomagneticModel.Wmm2025,
            "WMM2025",
            DeclinationErrors.Wmm2025,
            "error model of WMM2025, NOAA and BGS: sqrt(0.26^2 + (5417 / H)^2) degrees, H in nT, one standard deviation"),
    ]);

    /// <summary>The models that answer in this process: <see cref="BuiltIn"/>, unless a program began with <see cref="Use"/>.</summary>
    public static MagneticModels InUse => Volatile.Read(ref _inUse) ?? BuiltIn;

    /// <summary>The rule, in order of time and without gaps.</summary>
    public IReadOnlyList<ModelSpan> Rule { get; }

    /// <summary>Decimal year of the earliest moment that any model answers for: 1900.0.</summary>
    public double FirstYear => Rule[0].ValidFromYear;

    /// <summary>Decimal year of the last moment that any model answers for; 2030.0 for <see cref="BuiltIn"/>.</summary>
    public double LastYear => Rule[^1].ValidToYear;

    /// <summary>Takes a set of models into use in this process. For a program's start, before anything was computed: answers given already do not change.</summary>
    public static void Use(MagneticModels models)
    {
        ArgumentNullException.ThrowIfNull(models);
        Volatile.Write(ref _inUse, models);
    }

    /// <summary>Magnetic north at a place in a decimal year by these models; as <see cref="MagneticField.At(GeoPoint, double)"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A year that is not a finite number, or a height outside −1 km to 850 km.</exception>
    public NorthAnswer At(GeoPoint point, double decimalYear)
    {
        if (!double.IsFinite(decimalYear))
        {
            throw DecimalYears.Outside(decimalYear, "write a decimal year such as 2026.5.");
        }

        if (!(point.HeightMeters >= MagneticField.LowestHeightMeters && point.HeightMeters <= MagneticField.GreatestHeightMeters))
        {
            throw new ArgumentOutOfRangeException(
                nameof(point),
                $"Height {point.HeightMeters.ToString("0.###", CultureInfo.InvariantCulture)} m is outside -1000 to 850000 m above the ellipsoid. Give metres, not feet or kilometres; 0 will do for every dial.");
        }

        return For(decimalYear) is { } span
            ? Known(span, point, decimalYear)
            : decimalYear < FirstYear
                ? new NorthAnswer.BeforeModels(point, decimalYear, Known(Rule[0], point, FirstYear))
                : new NorthAnswer.AfterModels(point, decimalYear, Known(Rule[^1], point, LastYear));
    }

    /// <summary>
    /// These models and a later World Magnetic Model, which answers from its epoch on for five years or until the next model begins; the models before it
    /// answer up to its epoch, and one of the same epoch is replaced.
    /// Such a file states no error, so the law of WMM2025 is carried over, and <see cref="ModelSpan.UncertaintySource"/> says so.
    /// </summary>
    /// <param name="coefficientFile">The text of the file WMM.COF as NOAA and BGS publish it.</param>
    /// <exception cref="FormatException">
    /// The text is no such file, or its model leaves a gap after <see cref="LastYear"/>, begins before 2025.0 or is not the Earth's; one sentence says which.
    /// </exception>
    public MagneticModels WithWorldModel(string coefficientFile)
    {
        ArgumentNullException.ThrowIfNull(coefficientFile);
        var model = WmmCoefficientFile.Read(coefficientFile);
        var (epoch, first) = (model.FirstEpochYear, BuiltIn.Rule[^1].ValidFromYear);
        if (epoch < first)
        {
            throw new FormatException(
                $"{model.Name} begins with {DecimalYears.Text(epoch)}, a time for which this program has the later and better {BuiltIn.Rule[^2].Name}; give a model that begins with {DecimalYears.Text(first)} or later.");
        }

        if (epoch > LastYear)
        {
            throw new FormatException(
                $"{model.Name} begins with {DecimalYears.Text(epoch)} and the models here end with {DecimalYears.Text(LastYear)}, which leaves years without an answer; add the model that begins with {DecimalYears.Text(LastYear)} first.");
        }

        CheckDipole(model, epoch);
        var span = new ModelSpan(
            epoch,
            epoch + YearsOfAWorldModel,
            () => model,
            model.Name,
            DeclinationErrors.Wmm2025,
            $"the error model of WMM2025 carried over, because the file of {model.Name} states none: sqrt(0.26^2 + (5417 / H)^2) degrees, H in nT, one standard deviation");
        var later = Rule.Where(other => other.ValidFromYear > epoch).ToList();
        return new MagneticModels(
        [
            .. Rule.Where(older => older.ValidFromYear < epoch).Select(older => older.Until(epoch)),
            later.Count > 0 ? span.Until(later[0].ValidFromYear) : span,
            .. later,
        ]);
    }

    /// <summary>The line of the rule for a year, or null outside <see cref="FirstYear"/> to <see cref="LastYear"/>.</summary>
    internal ModelSpan? For(double decimalYear)
    {
        if (decimalYear < FirstYear || decimalYear > LastYear)
        {
            return null;
        }

        for (var k = Rule.Count - 1; k > 0; k--)
        {
            if (decimalYear >= Rule[k].ValidFromYear)
            {
                return Rule[k];
            }
        }

        return Rule[0];
    }

    private static NorthAnswer.Known Known(ModelSpan span, GeoPoint point, double decimalYear) =>
        new(point, decimalYear, span, span.Model.At(point, decimalYear));

    /// <summary>
    /// Exchanged columns, another planet or another unit show at once in the field over one place on the equator and at a pole, where the dipole is nearly all.
    /// </summary>
    private void CheckDipole(GeomagneticModel model, double epoch)
    {
        var before = For(epoch)!.Model;
        foreach (var place in new[] { GeoPoint.FromDegrees(0.0, 0.0), GeoPoint.FromDegrees(0.0, 90.0), GeoPoint.FromDegrees(90.0, 0.0) })
        {
            var (a, b) = (before.At(place, epoch).Field, model.At(place, epoch).Field);
            var step = Math.Max(Math.Abs(a.NorthNanotesla - b.NorthNanotesla), Math.Max(Math.Abs(a.EastNanotesla - b.EastNanotesla), Math.Abs(a.DownNanotesla - b.DownNanotesla)));
            if (step > MostDipoleStepNanotesla)
            {
                throw new FormatException(string.Create(
                    CultureInfo.InvariantCulture,
                    $"{model.Name} differs from {before.Name} by {step:0} nT at {place} at {epoch:0.0##}, which the Earth's field does not do ({MostDipoleStepNanotesla:0} nT is allowed); its columns or units are not those of WMM.COF, so get the file anew."));
            }
        }
    }
}
