using MathNet.Numerics.LinearAlgebra;
using SunLessons.Dials;

namespace SunLessons.Logs;

/// <summary>
/// A dial with faults, in parameters that are all minutes of time (a degree counts as four), so that sizes can be compared. Everything is the
/// <see cref="ForwardModel"/> run with other dials; no small-fault law.
/// </summary>
internal sealed class FaultModel
{
    public const int Faults = 6;
    public const int Combinations = 4;
    public const double MinutesPerDegree = 4.0;

    /// <summary>
    /// Beyond 10 degrees a result of these fits says nothing: the faults no longer add up there (their exact effect and the sum of their parts are
    /// minutes apart), so an uncertainty so wide is "open".
    /// </summary>
    public const double OpenBeyondMinutes = 10.0 * MinutesPerDegree;

    private readonly FlatDial _dial;
    private readonly DialStance _presumed;
    private readonly Latitude _place;

    public FaultModel(FlatDial dial, DialStance presumed, Latitude place) => (_dial, _presumed, _place) = (dial, presumed, place);

    /// <summary>The six faults, minutes each, that stand for the four combinations: exact also for large ones, for a rigid dial.</summary>
    public Matrix<double> FaultsOfCombinations()
    {
        var (sin, cos) = Math.SinCos(_place.Radians);
        var map = Matrix<double>.Build.Dense(Faults, Combinations);
        map[(int)Fault.ClockSlow, (int)Combination.Constant] = 1.0;
        map[(int)Fault.TwistClockwise, (int)Combination.StyleSideways] = cos;
        map[(int)Fault.EastEdgeRaised, (int)Combination.StyleSideways] = -sin;
        map[(int)Fault.StyleNorthward, (int)Combination.StyleForLatitude] = 1.0;
        map[(int)Fault.LinesNorthward, (int)Combination.StyleForLatitude] = 1.0;
        map[(int)Fault.LinesNorthward, (int)Combination.LinesAgainstStyle] = 1.0;
        return map;
    }

    /// <summary>Dial minus the Sun's hour, minutes, for faults given in minutes; null where such a dial shows nothing.</summary>
    public double? Fast(Vector<double> faults, LightMoment moment)
    {
        double Degrees(Fault fault) => faults[(int)fault] / MinutesPerDegree;
        var style = _dial.StyleLatitude.Degrees + Degrees(Fault.StyleNorthward);
        var scale = _dial.ScaleLatitude.Degrees + Degrees(Fault.LinesNorthward);
        if (Math.Abs(style) > 90.0 || Math.Abs(scale) > 90.0)
        {
            return null;
        }

        var dial = new FlatDial(Latitude.FromDegrees(scale), Latitude.FromDegrees(style));
        var stance = new DialStance(
            _presumed.TwistClockwise + Angle.FromDegrees(Degrees(Fault.TwistClockwise)),
            _presumed.EastEdgeRaised + Angle.FromDegrees(Degrees(Fault.EastEdgeRaised)),
            _presumed.NorthEdgeRaised + Angle.FromDegrees(Degrees(Fault.NorthEdgeRaised)));
        return DialError.FastMinutes(dial, stance, _place, moment.HourAngle, moment.Declination) + faults[(int)Fault.ClockSlow];
    }

    /// <summary>How one reading moves with each fault, minutes for a minute; null where the dial shows nothing.</summary>
    public Vector<double>? Slope(Vector<double> faults, LightMoment moment)
    {
        // A thousandth of a degree: small against any fault, large against rounding.
        const double Step = 0.004;
        var slope = Vector<double>.Build.Dense(Faults);
        for (var k = 0; k < Faults; k++)
        {
            Vector<double> low = faults.Clone(), high = faults.Clone();
            low[k] -= Step;
            high[k] += Step;
            if (Fast(high, moment) is not { } above || Fast(low, moment) is not { } below)
            {
                return null;
            }

            slope[k] = Math.IEEERemainder(above - below, 1440.0) / (2.0 * Step);
        }

        return slope;
    }
}
