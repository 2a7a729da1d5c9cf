namespace SunLessons.Magnetism;

/// <summary>One line of the rule in <see cref="MagneticModels.Rule"/>: which model answers for which years. Immutable.</summary>
public sealed class ModelSpan
{
    private readonly Func<GeomagneticModel> _model;
    private readonly Func<FieldVector, (Angle Within68Percent, Angle StandardDeviation)> _errors;

    internal ModelSpan(
        double validFromYear,
        double validToYear,
        Func<GeomagneticModel> model,
        string name,
        Func<FieldVector, (Angle Within68Percent, Angle StandardDeviation)> errors,
        string errorSource)
    {
        Name = name;
        ValidFromYear = validFromYear;
        ValidToYear = validToYear;
        _model = model;
        _errors = errors;
        UncertaintySource = errorSource;
    }

    /// <summary>Name of the model, such as <c>WMM2025</c>.</summary>
    public string Name { get; }

    /// <summary>Decimal year from which this model answers, inclusive.</summary>
    public double ValidFromYear { get; }

    /// <summary>Decimal year at which this model hands over to the next line; the last line answers at this very moment too.</summary>
    public double ValidToYear { get; }

    /// <summary>Where the size of the declination's uncertainty comes from.</summary>
    public string UncertaintySource { get; }

    /// <summary>The coefficients.</summary>
    public GeomagneticModel Model => _model();

    /// <summary>The same model, handing over at a decimal year if that comes sooner.</summary>
    internal ModelSpan Until(double year) => new(ValidFromYear, Math.Min(ValidToYear, year), _model, Name, _errors, UncertaintySource);

    internal (Angle Within68Percent, Angle StandardDeviation) DeclinationErrors(FieldVector field) => _errors(field);
}
