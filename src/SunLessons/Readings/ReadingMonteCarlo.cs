using SunLessons.Dials;
using SunLessons.Uncertainty;

namespace SunLessons.Readings;

/// <summary>
/// A dial reading's whole chain by Monte Carlo: every cause in the reading's budget is drawn and the dial is run backwards for each draw.
/// </summary>
/// <remarks>
/// Backwards as <see cref="InverseModel"/>: the Sun lies in the plane of style and shadow. The tests run each drawn dial forwards again through the
/// <see cref="ForwardModel"/> and find the reading within 1e-6 minutes. The Sun's declination and the equation of time move evenly from their values at the
/// reading's moment; a change of the zone's law within the uncertainty is not followed.
/// </remarks>
public static class ReadingMonteCarlo
{
    /// <summary>The draws of a clock time, minutes after the chain's own shown time, beside the chain's first-order budget.</summary>
    /// <param name="chain">The chain, as <see cref="ClockFromDial"/> gave it.</param>
    /// <param name="profile">The profile it was given; null for a dial made for the place and standing right.</param>
    /// <param name="probability">Coverage probability, 0.5 to 0.999.</param>
    /// <param name="draws">As for <see cref="MonteCarlo"/>.</param>
    /// <param name="seed">As for <see cref="MonteCarlo"/>.</param>
    /// <exception cref="ArgumentException">The profile is not the one that the chain was made with.</exception>
    public static FirstOrderCheck Of(
        ReadingChain chain,
        DialProfile? profile = null,
        double probability = 0.95,
        int draws = MonteCarlo.DefaultDraws,
        long seed = MonteCarlo.DefaultSeed)
    {
        ArgumentNullException.ThrowIfNull(chain);
        var (inputs, model) = ModelOf(chain, profile);
        return FirstOrderCheck.Of(chain.Budget, MonteCarlo.Of("minutes", inputs, model, draws, seed), probability);
    }

    /// <summary>The causes of doubt of a reading as quantities, and the sum of its steps in minutes for given values of them: for a budget of one's own.</summary>
    /// <param name="chain">The chain, as <see cref="ClockFromDial"/> gave it.</param>
    /// <param name="profile">The profile it was given; null for a dial made for the place and standing right.</param>
    /// <exception cref="ArgumentException">The profile is not the one that the chain was made with.</exception>
    public static (IReadOnlyList<Quantity> Inputs, MeasurementModel Model) ModelOf(ReadingChain chain, DialProfile? profile = null)
    {
        ArgumentNullException.ThrowIfNull(chain);
        var draw = new ReadingDraw(chain, profile ?? DialProfile.Faultless);
        if (Math.Abs(draw.HourAngleDegrees(new double[draw.Inputs.Count]) - chain.HourAngle.Degrees) is not < 1e-6)
        {
            throw new ArgumentException(
                $"With this profile the dial does not show {chain.Shown} at that moment; give the profile that the reading was corrected with.", nameof(profile));
        }

        return (draw.Inputs, draw.Minutes);
    }
}
