using System.Globalization;
using MathNet.Numerics.Distributions;

namespace SunLessons.Uncertainty;

/// <summary>Coverage probabilities and the factors that belong to them.</summary>
internal static class Probabilities
{
    public static double Checked(double probability) => probability >= 0.5 && probability <= 0.999
        ? probability
        : throw new ArgumentOutOfRangeException(
            nameof(probability),
            $"Coverage probability {probability.ToString(CultureInfo.InvariantCulture)} is outside 0.5 to 0.999; write 0.95 for 95 in 100.");

    /// <summary>
    /// The factor for a two-sided interval of that probability: from Student's t for finite degrees of freedom, cut to the whole number below as GUM G.4.1
    /// allows, otherwise from the bell.
    /// </summary>
    public static double Factor(double probability, double degreesOfFreedom)
    {
        var upper = (1.0 + Checked(probability)) / 2.0;

        // Below one there is no t; above a million it is the bell to six figures.
        return degreesOfFreedom > 1e6
            ? PortableMath.NormalQuantile(upper)
            : StudentT.InvCDF(0.0, 1.0, Math.Max(1.0, Math.Floor(degreesOfFreedom + 1e-9)), upper);
    }
}
