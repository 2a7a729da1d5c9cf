namespace SunLessons.Dials.Faces;

/// <summary>
/// A stretch of a day in which a face is lit: from one hour angle forward to another, afternoon positive; it runs over midnight where
/// <paramref name="To"/> is the smaller.
/// </summary>
/// <param name="From">Where light comes.</param>
/// <param name="To">Where it goes.</param>
public readonly record struct LitSpan(HourAngle From, HourAngle To)
{
    /// <summary>Its length in hours of hour angle, above 0 and at most 24.</summary>
    public double Hours
    {
        get
        {
            var turn = (To.Angle - From.Angle).InOneTurn().Degrees;
            return (turn == 0.0 ? 360.0 : turn) / 15.0;
        }
    }

    /// <summary>Whether an hour angle lies within, ends left out.</summary>
    public bool Holds(HourAngle hourAngle)
    {
        var at = (hourAngle.Angle - From.Angle).InOneTurn().Degrees / 15.0;
        return at > 0.0 && at < Hours;
    }
}
