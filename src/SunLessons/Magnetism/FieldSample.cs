namespace SunLessons.Magnetism;

/// <summary>The field at a place and moment together with its yearly change there.</summary>
/// <param name="Field">The field, nanotesla.</param>
/// <param name="RatePerYear">Its change, nanotesla a year.</param>
public readonly record struct FieldSample(FieldVector Field, FieldVector RatePerYear)
{
    /// <summary>
    /// Change of the magnetic declination, degrees a year, eastwards positive: the derivative (X·Y′ − Y·X′)/H² of D = atan2(Y, X).
    /// Zero where the horizontal intensity is zero, because no declination exists there.
    /// </summary>
    public Angle DeclinationChangePerYear
    {
        get
        {
            var h2 = Field.NorthNanotesla * Field.NorthNanotesla + Field.EastNanotesla * Field.EastNanotesla;
            return h2 > 0.0
                ? Angle.FromRadians((Field.NorthNanotesla * RatePerYear.EastNanotesla - Field.EastNanotesla * RatePerYear.NorthNanotesla) / h2)
                : Angle.Zero;
        }
    }
}
