using System.Globalization;

namespace SunLessons.Magnetism;

/// <summary>
/// What can be said about magnetic north at a place and time: <see cref="Known"/>, <see cref="BeforeModels"/> or <see cref="AfterModels"/>.
/// Nothing is extrapolated and nothing is clamped.
/// </summary>
public abstract record NorthAnswer
{
    private NorthAnswer(GeoPoint point, double decimalYear)
    {
        Point = point;
        DecimalYear = decimalYear;
    }

    /// <summary>The place that was asked about.</summary>
    public GeoPoint Point { get; }

    /// <summary>The decimal year that was asked about.</summary>
    public double DecimalYear { get; }

    /// <summary>The answer in plain words, one or two sentences, invariant culture.</summary>
    public abstract string Summary { get; }

    /// <summary>A model answers for this place and time.</summary>
    public sealed record Known : NorthAnswer
    {
        internal Known(GeoPoint point, double decimalYear, ModelSpan span, FieldSample sample)
            : base(point, decimalYear)
        {
            Span = span;
            Field = sample.Field;
            RatePerYear = sample.RatePerYear;
            YearlyChange = sample.DeclinationChangePerYear;
            (StandardUncertainty, StandardDeviation) = span.DeclinationErrors(sample.Field);
        }

        /// <summary>The line of the rule that answered.</summary>
        public ModelSpan Span { get; }

        /// <summary>The field, nanotesla.</summary>
        public FieldVector Field { get; }

        /// <summary>Its yearly change, nanotesla a year.</summary>
        public FieldVector RatePerYear { get; }

        /// <summary>How far magnetic north lies east of true north, east positive.</summary>
        public MagneticDeclination Declination => Field.Declination;

        /// <summary>
        /// The size within which the model's declination is right in about 68 cases of 100, degrees, by <see cref="ModelSpan.UncertaintySource"/>.
        /// For IGRF-14 it is the 68.3 % interval, found for 1980 to 2021 and taken for all its years, though older years are likelier worse.
        /// Never above 180°/√3 = 103.9°, at which nothing is known. Iron nearby and the reading of the needle come on top.
        /// </summary>
        public Angle StandardUncertainty { get; }

        /// <summary>
        /// The standard deviation of the same error, for budgets that add squares. WMM2025: equal to <see cref="StandardUncertainty"/>.
        /// IGRF-14: larger (144 nT north and 136 nT east instead of 87 and 73), because a few stations stand on strongly magnetic rock.
        /// </summary>
        public Angle StandardDeviation { get; }

        /// <summary>Change of the declination, degrees a year, eastwards positive; good for a few years only.</summary>
        public Angle YearlyChange { get; }

        /// <summary>Inclination (dip) of the field below the horizon, downwards positive.</summary>
        public Angle Inclination => Field.Inclination;

        /// <summary>Horizontal intensity, nanotesla: what turns the needle.</summary>
        public double HorizontalIntensityNanotesla => Field.HorizontalNanotesla;

        /// <summary>Total intensity, nanotesla.</summary>
        public double TotalIntensityNanotesla => Field.TotalNanotesla;

        /// <summary>Name of the model, such as <c>WMM2025</c>.</summary>
        public string ModelName => Span.Name;

        /// <summary>Decimal year from which this model answers.</summary>
        public double ValidFromYear => Span.ValidFromYear;

        /// <summary>Decimal year until which this model answers.</summary>
        public double ValidToYear => Span.ValidToYear;

        /// <summary>Whether the horizontal field is strong enough for a compass.</summary>
        public CompassZone Zone => CompassZones.For(HorizontalIntensityNanotesla);

        /// <summary>Whether a compass can be used here at all: everywhere but in the blackout zone.</summary>
        public bool CompassUsable => Zone != CompassZone.Blackout;

        /// <inheritdoc/>
        public override string Summary => Zone switch
        {
            CompassZone.Blackout =>
                $"No compass can be used here: the level field is {Text(HorizontalIntensityNanotesla, "0")} nT, below {Text(CompassZones.BlackoutBelowNanotesla, "0")} nT ({ModelName}, {Year(DecimalYear)}). Find north by the Sun.",
            CompassZone.Caution =>
                $"{Offset()} Use with caution: the level field is {Text(HorizontalIntensityNanotesla, "0")} nT, below {Text(CompassZones.CautionBelowNanotesla, "0")} nT.",
            _ => Offset(),
        };

        private string Offset()
        {
            var change = Math.Round(YearlyChange.Degrees, 2, MidpointRounding.AwayFromZero);
            var moves = change == 0.0 ? "hardly moving" : $"moving {Text(Math.Abs(change), "0.00")} degrees {(change > 0.0 ? "east" : "west")} a year";
            return $"The needle points {EastOrWest(Declination)} of true north, give or take {Text(StandardUncertainty.Degrees, "0.0")} degrees, {moves} ({ModelName}, {Year(DecimalYear)}).";
        }
    }

    /// <summary>The time lies before the first model: there is no answer, only a neighbour.</summary>
    public sealed record BeforeModels : NorthAnswer
    {
        internal BeforeModels(GeoPoint point, double decimalYear, Known bound)
            : base(point, decimalYear) => Bound = bound;

        /// <summary>The value at the earliest moment a model knows (1900.0). It bounds what is known in time; it is not an estimate for the year asked about.</summary>
        public Known Bound { get; }

        /// <inheritdoc/>
        public override string Summary =>
            $"No model here reaches back to {Year(DecimalYear)}: {Bound.ModelName} begins with {Year(Bound.ValidFromYear)}, when the needle pointed {EastOrWest(Bound.Declination)} of true north; before that it may have differed by many degrees. Look for an observation made near that place and time.";
    }

    /// <summary>The time lies after the last model's validity: the model has expired.</summary>
    public sealed record AfterModels : NorthAnswer
    {
        internal AfterModels(GeoPoint point, double decimalYear, Known last)
            : base(point, decimalYear) => Last = last;

        /// <summary>The value at the last valid moment (2030.0 for the models built in). It bounds what is known in time; it is not an estimate for the year asked about.</summary>
        public Known Last { get; }

        /// <summary>Name of the expired model.</summary>
        public string ModelName => Last.ModelName;

        /// <summary>Decimal year until which it was valid.</summary>
        public double ValidToYear => Last.ValidToYear;

        /// <inheritdoc/>
        public override string Summary =>
            $"{ModelName} was valid until {Year(ValidToYear)} and cannot answer for {Year(DecimalYear)}: {MagneticField.NextModel}, or set the dial by the Sun instead of the compass.";
    }

    private static string EastOrWest(MagneticDeclination declination)
    {
        var degrees = Math.Round(declination.Degrees, 1, MidpointRounding.AwayFromZero);
        return $"{Text(Math.Abs(degrees), "0.0")} degrees {(degrees < 0.0 ? "west" : "east")}";
    }

    private static string Year(double decimalYear) => Text(decimalYear, "0.0");

    private static string Text(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
