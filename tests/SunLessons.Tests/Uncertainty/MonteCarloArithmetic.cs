using SunLessons.Uncertainty;

namespace SunLessons.Tests.Uncertainty;

public class MonteCarloArithmetic
{
    private static readonly Quantity Bell = Quantity.Normal("bell", "min", 1.0, 2.0);
    private static readonly Quantity Flat = Quantity.Uniform("flat", "min", 0.0, 3.0);

    [Fact]
    public void The_draws_depend_on_the_seed_and_not_on_the_number_of_threads()
    {
        static MonteCarlo Drawn(long seed, int threads) =>
            MonteCarlo.Of("min", [Bell, Flat.Shape == Distribution.Uniform ? Flat : Bell], x => x[0] * x[1], 50_000, seed, threads: threads);
        var one = Drawn(5, 1);
        Assert.True(one.Sorted.SequenceEqual(Drawn(5, 7).Sorted));
        Assert.False(one.Sorted.SequenceEqual(Drawn(6, 1).Sorted));
        Assert.Equal(50_000, one.Sorted.Length);
        Assert.True(one.Sorted.ToArray().SequenceEqual(one.Sorted.ToArray().Order()));
    }

    [Fact]
    public void The_first_draws_of_the_first_seed_are_written_down_for_every_platform()
    {
        // Made by this program on Linux x64, to the last bit; another machine must give the same. A triangle and a bell need no platform function.
        var drawn = MonteCarlo.Of("", [Quantity.Triangular("t", "", 0, 1), Bell], x => x[0] + x[1], 10_000, seed: 1);
        Assert.Equal(FirstSeedLowest, drawn.Sorted[0]);
        Assert.Equal(FirstSeedHighest, drawn.Sorted[^1]);
    }

    private const double FirstSeedLowest = -7.7637681681766333;
    private const double FirstSeedHighest = 9.7441036094062898;

    [Fact]
    public void Wholly_correlated_bells_cancel_and_shapes_without_a_joint_law_are_refused()
    {
        double[,] alike = { { 1, 1 }, { 1, 1 } };
        var difference = MonteCarlo.Of("min", [Bell, Bell], x => x[0] - x[1], 10_000, correlations: alike);
        Assert.Equal(0.0, difference.StandardUncertainty);

        var refused = Assert.Throws<ArgumentException>(() => MonteCarlo.Of("min", [Bell, Flat], x => x[0], correlations: new double[,] { { 1, 0.5 }, { 0.5, 1 } }));
        Assert.StartsWith("Input \"flat\" is correlated but not a bell of known width: JCGM 101 gives a joint distribution for bells only; make it with Quantity.Normal and no degrees of freedom, or name the shared cause as an input of its own.", refused.Message);
        double[,] impossible = { { 1, 0.9, -0.9 }, { 0.9, 1, 0.9 }, { -0.9, 0.9, 1 } };
        Assert.StartsWith(
            "The correlations contradict one another at input 3;",
            Assert.Throws<ArgumentException>(() => MonteCarlo.Of("min", [Bell, Bell, Bell], x => x[0], correlations: impossible)).Message);
    }

    [Fact]
    public void Draws_without_a_result_are_counted_and_told()
    {
        var check = FirstOrderCheck.Of("min", [Quantity.Uniform("x", "min", 0.5, 1.0)], x => x[0] < 0.0 ? double.NaN : x[0], draws: 100_000);

        // A quarter of the draws; five times the scatter of that count.
        Assert.Equal(25_000, check.MonteCarlo.DrawsWithoutResult, 5.0 * Math.Sqrt(100_000 * 0.25 * 0.75));
        Assert.EndsWith(" draws have no result and are left out of the interval.", check.Sentence);
        Assert.Throws<InvalidOperationException>(() => MonteCarlo.Of("min", [Bell], x => double.NaN, 10_000));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    public void What_a_model_throws_reaches_the_caller_as_it_was_thrown(int threads) => Assert.Throws<FormatException>(() =>
        MonteCarlo.Of("min", [Bell], x => x[0] > 1.0 ? throw new FormatException("stop") : x[0], 10_000, threads: threads));

    [Fact]
    public void A_straight_model_of_bells_agrees_and_a_few_draws_of_it_do_not_settle()
    {
        Quantity[] inputs = [Bell, Quantity.Normal("other", "min", 0, 1)];
        Assert.StartsWith("First order holds here:", FirstOrderCheck.Of("min", inputs, x => x[0] + 3.0 * x[1]).Sentence);
        var few = FirstOrderCheck.Of("min", inputs, x => x[0] + 3.0 * x[1], digits: 2, draws: 10_000);
        Assert.Equal(FirstOrderVerdict.NotSettled, few.Verdict);
        Assert.Equal(0.05, few.Tolerance, 1e-12); // sqrt(13) = 3.6, two digits: half of 0.1.
    }

    [Fact]
    public void Bad_input_gets_one_sentence()
    {
        Assert.StartsWith(
            "100 draws are outside 10000 to 100000000; write 1000000 for a 95 % interval.",
            Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Of("", [Bell], x => x[0], 100)).Message);
        Assert.StartsWith(
            "Coverage probability 95 is outside 0.5 to 0.999; write 0.95 for 95 in 100.",
            Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Of("", [Bell], x => x[0], 10_000).Shortest(95)).Message);
    }
}
