using SunLessons.Sun;

namespace SunLessons.Tests.Sun;

/// <summary>Refraction against Meeus' example and against itself.</summary>
public sealed class RefractionTests
{
    // Meeus (1998) example 16.a: the Sun's lower limb seen at 0 30 00 stands truly at 0 01 14.7 (authorities/spa_meeus, "16a_refraction_bennett").
    [Fact]
    public void MeeusExample16a()
    {
        var observed = Altitude.FromDegrees(0.5);
        var geometric = observed.Angle - Refraction.FromObserved(observed);

        // 0.1": the example's last place; it works on with R = 28.754', rounded to 0.06".
        Assert.Equal(74.7, geometric.ArcSeconds, 0.1);

        // The upper limb, truly at 0 33 14.76, is seen at 0 57 51.96 by the other formula. 0.3": those numbers
        // differ by exactly 24.62', so the example rounded its refraction to 0.01'.
        var upper = Altitude.FromDegrees(33.0 / 60.0 + 14.76 / 3600.0);
        Assert.Equal(57.0 * 60.0 + 51.96, (upper.Angle + Refraction.FromGeometric(upper)).ArcSeconds, 0.3);
    }

    // Saemundsson made his formula the inverse of Bennett's; Meeus says they agree within 0.1 arcminute.
    [Fact]
    public void TheTwoFormulasAreInverse()
    {
        for (var degrees = 0.0; degrees <= 90.0; degrees += 0.25)
        {
            var geometric = Altitude.FromDegrees(degrees);
            var observed = Altitude.FromDegrees(Math.Min(90.0, degrees + Refraction.FromGeometric(geometric).Degrees));
            Assert.Equal(Refraction.FromGeometric(geometric).ArcSeconds, Refraction.FromObserved(observed).ArcSeconds, 6.0);
        }
    }

    // 34' at 1010 hPa and 10 degrees Celsius; a frosty day at 1030 hPa and -20 degrees has 34' x 1030/1010 x 283/253, worked by hand: 38.78'.
    [Fact]
    public void TheHorizonsRefractionFollowsTheAir()
    {
        Assert.Equal(Refraction.AtHorizon, Refraction.AtHorizonIn(1010.0, 10.0));
        Assert.Equal(38.78, Refraction.AtHorizonIn(1030.0, -20.0).ArcSeconds / 60.0, 0.01);
        Assert.Equal(0.0, Refraction.AtHorizonIn(0.0, 10.0).ArcSeconds);
    }

    [Fact]
    public void RefractionIsNeverNegativeAndNothingAtTheZenith()
    {
        Assert.InRange(Refraction.FromGeometric(Altitude.FromDegrees(90.0)).ArcSeconds, 0.0, 0.1);
        Assert.InRange(Refraction.FromObserved(Altitude.FromDegrees(90.0)).ArcSeconds, 0.0, 0.1);
        Assert.Equal(0.0, Refraction.FromGeometric(Altitude.FromDegrees(10.0), pressureHectopascals: 0.0).ArcSeconds);
    }

    [Fact]
    public void BadInputGetsOneSentence()
    {
        var low = Assert.Throws<ArgumentOutOfRangeException>(() => Refraction.FromGeometric(Altitude.FromDegrees(-2.0)));
        Assert.StartsWith("Altitude -2 degrees is outside -1.5 to +90 degrees, where refraction is known. The Sun is below the horizon.", low.Message, StringComparison.Ordinal);
        var pressure = Assert.Throws<ArgumentOutOfRangeException>(() => Refraction.FromGeometric(Altitude.FromDegrees(10.0), 101325.0));
        Assert.StartsWith("Pressure 101325 hPa is outside 0 to 1100 hPa. Give the pressure at the place in hectopascals, such as 1010.", pressure.Message, StringComparison.Ordinal);
        var heat = Assert.Throws<ArgumentOutOfRangeException>(() => Refraction.FromObserved(Altitude.FromDegrees(10.0), 1010.0, 283.0));
        Assert.StartsWith("Temperature 283 degrees Celsius is outside -90 to +60. Give degrees Celsius, such as 10.", heat.Message, StringComparison.Ordinal);
    }
}
