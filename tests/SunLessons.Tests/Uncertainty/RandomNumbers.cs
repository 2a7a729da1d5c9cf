using MathNet.Numerics.Distributions;
using SunLessons.Tests.Dials;
using SunLessons.Uncertainty;

namespace SunLessons.Tests.Uncertainty;

public class RandomNumbers
{
    [Fact]
    public void Both_generators_give_the_numbers_that_are_widely_printed()
    {
        // SplitMix64 from state 1234567 and xoshiro256++ from the state 1, 2, 3, 4: test vectors printed with many implementations; from memory.
        var state = 1234567UL;
        Assert.Equal(6457827717110365317UL, Xoshiro256.SplitMix(ref state));
        Assert.Equal(3203168211198807973UL, Xoshiro256.SplitMix(ref state));
        Assert.Equal(9817491932198370423UL, Xoshiro256.SplitMix(ref state));

        var random = new Xoshiro256(1, 2, 3, 4);
        ulong[] printed = [41943041, 58720359, 3588806011781223, 3591011842654386, 9228616714210784205, 9973669472204895162];
        Assert.Equal(printed, printed.Select(_ => random.Next()).ToArray());
    }

    [Fact]
    public void A_jump_is_a_linear_map_of_the_state_and_leads_elsewhere()
    {
        // The map is linear over single bits: jumping the exclusive-or of two states gives the exclusive-or of their jumps, seen through the state's first output words.
        var a = new Xoshiro256(1, 2, 3, 4);
        Assert.NotEqual(new Xoshiro256(1, 2, 3, 4).Next(), a.Jumped().Next());

        // Jumping and stepping commute, which holds for powers of the step only.
        var stepped = new Xoshiro256(1, 2, 3, 4);
        stepped.Next();
        var jumped = a.Jumped();
        jumped.Next();
        var other = stepped.Jumped();
        for (var i = 0; i < 4; i++)
        {
            Assert.Equal(jumped.Next(), other.Next());
        }
    }

    [Fact]
    public void The_normal_quantile_is_that_of_two_other_programs()
    {
        foreach (var row in AuthorityFile.Rows("uncertainty", "normal_quantile.csv"))
        {
            var (p, expected) = (AuthorityFile.Number(row[0]), AuthorityFile.Number(row[1]));

            // Ten units in the last place: both sides round some twenty operations.
            Assert.Equal(expected, PortableMath.NormalQuantile(p), 2e-15 * Math.Abs(expected));

            // MathNet's own is good to some 1e-9 in the far tail.
            Assert.Equal(Normal.InvCDF(0, 1, p), PortableMath.NormalQuantile(p), 1e-8);
        }
    }

    [Fact]
    public void Logarithm_and_exponential_are_those_of_the_platform_but_for_the_last_digit()
    {
        var random = Xoshiro256.FromSeed(7);
        for (var i = 0; i < 20_000; i++)
        {
            var x = i % 2 == 0 ? random.Uniform() : Math.Exp(-700.0 * random.Uniform());

            // Two units in the last place, or of 1 where the logarithm is near 0.
            Assert.Equal(Math.Log(x), PortableMath.Log(x), Math.Max(1e-16, 4.5e-16 * Math.Abs(Math.Log(x))));
            var power = 60.0 * (random.Uniform() - 0.5);
            Assert.Equal(1.0, PortableMath.Exp(power) / Math.Exp(power), 2e-15);
        }
    }
}
