using System.Numerics;

namespace SunLessons.Uncertainty;

/// <summary>
/// The random numbers of this library: xoshiro256++ 1.0 of Blackman and Vigna (2021, ACM Transactions on Mathematical Software 47(4), 36), seeded by
/// SplitMix64 (Steele, Lea and Flood 2014). Whole-number arithmetic only, so the same seed gives the same numbers on every machine.
/// Written from memory of the papers; the tests hold outputs of both that are widely printed.
/// </summary>
internal struct Xoshiro256
{
    private ulong _a;
    private ulong _b;
    private ulong _c;
    private ulong _d;

    public Xoshiro256(ulong a, ulong b, ulong c, ulong d) => (_a, _b, _c, _d) = (a, b, c, d);

    public static Xoshiro256 FromSeed(ulong seed) =>
        new(SplitMix(ref seed), SplitMix(ref seed), SplitMix(ref seed), SplitMix(ref seed));

    /// <summary>One step of SplitMix64.</summary>
    public static ulong SplitMix(ref ulong state)
    {
        state += 0x9E3779B97F4A7C15;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    public ulong Next()
    {
        var result = BitOperations.RotateLeft(_a + _d, 23) + _a;
        var t = _b << 17;
        _c ^= _a;
        _d ^= _b;
        _b ^= _c;
        _a ^= _d;
        _c ^= t;
        _d = BitOperations.RotateLeft(_d, 45);
        return result;
    }

    /// <summary>The generator 2^128 steps further on: streams that cannot meet.</summary>
    public readonly Xoshiro256 Jumped()
    {
        var from = this;
        var to = new Xoshiro256(0, 0, 0, 0);
        foreach (var word in (ReadOnlySpan<ulong>)[0x180EC6D33CFD0ABA, 0xD5A61266F0C9392C, 0xA9582618E03FC9AA, 0x39ABDC4529B1661C])
        {
            for (var bit = 0; bit < 64; bit++)
            {
                if ((word >> bit & 1) != 0)
                {
                    to._a ^= from._a;
                    to._b ^= from._b;
                    to._c ^= from._c;
                    to._d ^= from._d;
                }

                from.Next();
            }
        }

        return to;
    }

    /// <summary>Evenly spread over 0 to 1, both excluded: the middles of 2^52 equal cells, each of them an exact number.</summary>
    public double Uniform() => ((Next() >> 12) + 0.5) * (1.0 / (1UL << 52));
}
