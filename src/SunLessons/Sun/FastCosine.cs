using System.Numerics;

namespace SunLessons.Sun;

/// <summary>
/// The cosine of many angles at once, the angles in TURNS. A position of the Sun is some 170 cosines and next to nothing else; with whole
/// turns taken off by rounding, eleven coefficients do, where the library's cosine must serve every angle there is.
/// </summary>
/// <remarks>
/// Taylor's series to the 20th power on half a turn to either side: the first term left out is π²²/22! = 8e-11. The largest term of the
/// Earth's series, 0.033 rad, then carries 3e-12 rad or 6e-7″.
/// </remarks>
internal static class FastCosine
{
    private static readonly Vector<double>[] Coefficients = Make();

    /// <summary>cos(2π × turns).</summary>
    public static Vector<double> OfTurns(Vector<double> turns)
    {
        var part = turns - Vector.Round(turns);
        var square = part * part;
        var sum = Coefficients[10];
        for (var k = 9; k >= 0; k--)
        {
            sum = sum * square + Coefficients[k];
        }

        return sum;
    }

    // The coefficient of turns^2k is (-1)^k (2 pi)^2k / (2k)!.
    private static Vector<double>[] Make()
    {
        var coefficients = new Vector<double>[11];
        var value = 1.0;
        for (var k = 0; k < coefficients.Length; k++)
        {
            coefficients[k] = new Vector<double>(value);
            value *= -4.0 * Math.PI * Math.PI / ((2 * k + 1) * (2 * k + 2));
        }

        return coefficients;
    }
}
