using System.Runtime.Intrinsics;

namespace SunLessons.Magnetism;

/// <summary>
/// A stretch of time over which every Gauss coefficient runs on a straight line: value at the start plus a rate.
/// Evaluates the field and its yearly change together; because the field is linear in the coefficients, the two come out of one sum.
/// </summary>
internal sealed class HarmonicSegment
{
    /// <summary>The highest degree that any model here uses (IGRF from 1995 on).</summary>
    public const int MaxDegree = 13;

    private const int RowLength = MaxDegree + 1;

    private static readonly Recurrence[] Steps = MakeSteps();

    // sqrt((2m−1)/(2m)) for m ≥ 2: from Q of (m−1, m−1) to Q of (m, m) in Schmidt's normalisation.
    private static readonly double[] Diagonal = MakeDiagonal();

    // Four lanes a coefficient pair: g and h at the start of the segment, then their rates a year.
    private readonly Vector256<double>[] _coefficients = new Vector256<double>[RowLength * RowLength];
    private readonly int _degree;

    public HarmonicSegment(double startYear, IEnumerable<(bool IsH, int Degree, int Order, double Main, double Rate)> coefficients)
    {
        StartYear = startYear;
        foreach (var (isH, n, m, main, rate) in coefficients)
        {
            ref var cell = ref _coefficients[m * RowLength + n];
            cell = isH ? cell.WithElement(1, main).WithElement(3, rate) : cell.WithElement(0, main).WithElement(2, rate);
            if (main != 0.0 || rate != 0.0)
            {
                _degree = Math.Max(_degree, n);
            }
        }
    }

    /// <summary>Decimal year from which the rates count.</summary>
    public double StartYear { get; }

    /// <summary>
    /// Spherical harmonic synthesis on the WGS 84 ellipsoid. Potential V = a Σ (a/r)^(n+1) (g cos mλ + h sin mλ) P(n,m)(cos θ) with Schmidt
    /// semi-normalised P and B = −∇V (NOAA and BGS, The US/UK World Magnetic Model, technical report, section 1.2; cited from memory).
    /// </summary>
    /// <remarks>
    /// For m ≥ 1 the recurrences run on Q = P / sin θ instead of P, so that the eastward part m·P/sin θ needs no division and the
    /// poles are places like any other. The factor (a/r)^(n+2) rides along inside the recurrences.
    /// Plain multiplications and additions only, no fused ones, so that every machine gives the same digits.
    /// </remarks>
    public FieldSample At(GeoPoint point, double decimalYear)
    {
        // Geodetic latitude φ and height -> geocentric radius r and colatitude θ.
        var (sinPhi, cosPhi) = Math.SinCos(point.Latitude.Radians);
        var heightKm = point.HeightMeters / 1000.0;
        var primeVertical = Ellipsoid.EquatorialRadiusKm / Math.Sqrt(1.0 - Ellipsoid.EccentricitySquared * sinPhi * sinPhi);
        var p = (primeVertical + heightKm) * cosPhi;
        var z = (primeVertical * (1.0 - Ellipsoid.EccentricitySquared) + heightKm) * sinPhi;
        var r = Math.Sqrt(p * p + z * z);
        var cosTheta = z / r;
        var sinTheta = p / r;
        var rho = Ellipsoid.FieldSphereKm / r;
        var rho2 = rho * rho;

        var (sinLambda, cosLambda) = Math.SinCos(point.Longitude.Radians);

        // m = 0: P itself and its derivative by θ; no eastward part.
        var north = Vector256<double>.Zero;
        var down = Vector256<double>.Zero;
        {
            double p2 = 0.0, p1 = rho2, d2 = 0.0, d1 = 0.0;
            for (var n = 1; n <= _degree; n++)
            {
                // n P(n) = (2n−1) cos θ P(n−1) − (n−1) P(n−2), and its derivative.
                var inverse = 1.0 / n;
                var p0 = ((2 * n - 1) * cosTheta * p1 * rho - (n - 1) * p2 * rho2) * inverse;
                var d0 = ((2 * n - 1) * (cosTheta * d1 - sinTheta * p1) * rho - (n - 1) * d2 * rho2) * inverse;
                var c = _coefficients[n];
                north += c * d0;
                down += c * ((n + 1) * p0);
                p2 = p1;
                p1 = p0;
                d2 = d1;
                d1 = d0;
            }
        }

        double x = north.GetElement(0), xRate = north.GetElement(2);
        double y = 0.0, yRate = 0.0;
        double zDown = -down.GetElement(0), zRate = -down.GetElement(2);

        double cosM = 1.0, sinM = 0.0;
        var diagonal = rho2 * rho; // Q(1,1) = 1, times (a/r)³
        for (var m = 1; m <= _degree; m++)
        {
            (cosM, sinM) = (cosM * cosLambda - sinM * sinLambda, sinM * cosLambda + cosM * sinLambda);
            if (m > 1)
            {
                diagonal *= Diagonal[m] * sinTheta * rho;
            }

            var row = m * RowLength;
            double q2 = 0.0, q1 = diagonal;
            var c = _coefficients[row + m];
            north = c * (m * cosTheta * q1);
            var east = c * q1;
            down = c * ((m + 1) * q1);
            for (var n = m + 1; n <= _degree; n++)
            {
                ref readonly var step = ref Steps[row + n];
                var q0 = step.Once * cosTheta * rho * q1 - step.Twice * rho2 * q2;

                // dP/dθ = n cos θ Q(n) − sqrt(n²−m²) Q(n−1)
                var derivative = n * cosTheta * q0 - step.Root * rho * q1;
                c = _coefficients[row + n];
                north += c * derivative;
                east += c * q0;
                down += c * ((n + 1) * q0);
                q2 = q1;
                q1 = q0;
            }

            x += north.GetElement(0) * cosM + north.GetElement(1) * sinM;
            xRate += north.GetElement(2) * cosM + north.GetElement(3) * sinM;
            y += m * (east.GetElement(0) * sinM - east.GetElement(1) * cosM);
            yRate += m * (east.GetElement(2) * sinM - east.GetElement(3) * cosM);
            zDown -= sinTheta * (down.GetElement(0) * cosM + down.GetElement(1) * sinM);
            zRate -= sinTheta * (down.GetElement(2) * cosM + down.GetElement(3) * sinM);
        }

        var years = decimalYear - StartYear;
        x += years * xRate;
        y += years * yRate;
        zDown += years * zRate;

        // From the geocentric to the geodetic vertical: turn by ψ = geocentric − geodetic latitude.
        var cosPsi = sinTheta * cosPhi + cosTheta * sinPhi;
        var sinPsi = cosTheta * cosPhi - sinTheta * sinPhi;
        return new FieldSample(
            new FieldVector(x * cosPsi - zDown * sinPsi, y, x * sinPsi + zDown * cosPsi),
            new FieldVector(xRate * cosPsi - zRate * sinPsi, yRate, xRate * sinPsi + zRate * cosPsi));
    }

    private static Recurrence[] MakeSteps()
    {
        var steps = new Recurrence[RowLength * RowLength];
        for (var m = 1; m <= MaxDegree; m++)
        {
            for (var n = m + 1; n <= MaxDegree; n++)
            {
                // sqrt(n²−m²) P(n) = (2n−1) cos θ P(n−1) − sqrt((n−1)²−m²) P(n−2), the same for Q.
                var root = Math.Sqrt(n * n - m * m);
                steps[m * RowLength + n] = new Recurrence((2 * n - 1) / root, Math.Sqrt((n - 1) * (n - 1) - m * m) / root, root);
            }
        }

        return steps;
    }

    private static double[] MakeDiagonal()
    {
        var diagonal = new double[RowLength];
        for (var m = 2; m <= MaxDegree; m++)
        {
            diagonal[m] = Math.Sqrt((2.0 * m - 1.0) / (2.0 * m));
        }

        return diagonal;
    }

    private readonly record struct Recurrence(double Once, double Twice, double Root);
}
