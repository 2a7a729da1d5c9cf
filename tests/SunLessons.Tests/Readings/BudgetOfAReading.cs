using NodaTime;
using SunLessons.Dials;
using SunLessons.Magnetism;
using SunLessons.Places;
using SunLessons.Readings;
using SunLessons.Uncertainty;

namespace SunLessons.Tests.Readings;

public class BudgetOfAReading
{
    private static readonly Place Vigo = Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find("Vigo")).Place;
    private static readonly LocalDate Day = new(2026, 12, 22);
    private static readonly DialStance Stance = DialStance.FromDegrees(5, 1, -1);

    [Fact]
    public void Steps_and_reading_together_are_the_combined_uncertainty()
    {
        var chain = ChainFor(new DialProfile { ScaleLatitude = Latitude.FromDegrees(45), Setting = new DialSetting.Standing(Stance), DateByTable = true });
        var sum = Square(chain.ShownStandardUncertaintyMinutes) + chain.Steps.Sum(step => Square(step.StandardUncertaintyMinutes));
        Assert.Equal(chain.Budget.CombinedStandardUncertainty, Math.Sqrt(sum), 1e-9);
        Assert.Equal(2.0 * chain.Budget.CombinedStandardUncertainty, chain.Budget.ExpandedUncertainty, 1e-12);
        Assert.Equal(chain.Total.Minutes, chain.Budget.Value, 1e-9);
        Assert.Equal(0.0, chain[StepName.Law].StandardUncertaintyMinutes);
        Assert.Equal(0.5 / Math.Sqrt(3.0), chain[StepName.Date].StandardUncertaintyMinutes, 1e-9); // The table of whole minutes.
        Assert.Equal(0.05 * 4.0 / Math.Sqrt(3.0), chain[StepName.Longitude].StandardUncertaintyMinutes, 1e-9);
    }

    [Theory]
    [InlineData("level, east to west")]
    [InlineData("level, north to south")]
    [InlineData("height of the style")]
    public void A_sensitivity_is_how_far_the_clock_moves_when_the_fault_is_put_in(string component)
    {
        // Independent of the budget's slopes: the whole chain is run with a fault of a twentieth of a degree either way.
        const double Fault = 0.05;
        double Clock(double by)
        {
            var stance = component switch
            {
                "level, east to west" => Stance with { EastEdgeRaised = Stance.EastEdgeRaised + Angle.FromDegrees(by) },
                "level, north to south" => Stance with { NorthEdgeRaised = Stance.NorthEdgeRaised + Angle.FromDegrees(by) },
                _ => Stance,
            };
            if (component == "height of the style")
            {
                var dial = new FlatDial(Latitude.FromDegrees(45), Latitude.FromDegrees(45 + by));
                var base45 = ChainFor(new DialProfile { ScaleLatitude = Latitude.FromDegrees(45), Setting = new DialSetting.Standing(stance) });
                return 4.0 * Assert.Single(InverseModel.HourAngles(dial, stance, Vigo.Point.Latitude, base45.Declination, base45.Shown)).Degrees;
            }

            return ChainFor(new DialProfile { ScaleLatitude = Latitude.FromDegrees(45), Setting = new DialSetting.Standing(stance) }).Total.Minutes;
        }

        var moved = (Clock(+Fault) - Clock(-Fault)) / (2.0 * Fault);
        var line = Line(ChainFor(new DialProfile { ScaleLatitude = Latitude.FromDegrees(45), Setting = new DialSetting.Standing(Stance) }), component);

        // 0.005 minutes per degree: the chain's declination moves with the answer, by a minute of time's worth.
        Assert.Equal(moved, line.Sensitivity, 0.005);
    }

    [Fact]
    public void A_degree_of_twist_at_the_December_noon_costs_Vigo_four_minutes()
    {
        // Minutes per degree, dial minus truth, -4.0 at Vigo's December noon (independent reckoning); the correction is the opposite.
        var profile = new DialProfile
        {
            Setting = new DialSetting.NoonLine(Azimuth.FromDegrees(0))
            {
                Doubt = new ComponentSize("direction", 1.0, ComponentUnit.Degrees, Distribution.Normal, "an example of one degree"),
            },
        };
        var chain = Assert.IsType<ClockReading.One>(ClockFromDial.Read(Vigo, Day, DialTime.FromHours(12), profile)).Chain;
        Assert.Equal(4.0, Line(chain, "direction").Sensitivity, 0.06);
    }

    [Fact]
    public void The_first_order_law_holds_for_a_pocket_dial_drawn_20000_times()
    {
        var north = Assert.IsType<NorthAnswer.Known>(MagneticField.At(Vigo.Point, Day.At(LocalTime.Noon).InUtc().ToInstant()));
        var profile = new DialProfile
        {
            ScaleLatitude = Vigo.Point.Latitude,
            Setting = new DialSetting.NeedleOnLine(new CompassLine(north.Declination)),
        };
        var chain = ChainFor(profile);
        var random = new Random(2026);
        double Draw(string name)
        {
            var line = Line(chain, name);
            return line.Quantity.Shape == Distribution.Normal
                ? line.Quantity.StandardUncertainty * Math.Sqrt(-2.0 * Math.Log(1.0 - random.NextDouble())) * Math.Cos(2.0 * Math.PI * random.NextDouble())
                : line.Quantity.StandardUncertainty * Math.Sqrt(3.0) * (2.0 * random.NextDouble() - 1.0);
        }

        string[] drawn = ["reading the compass", "iron near the compass", "model of the Earth's field", "level, east to west", "level, north to south", "height of the style"];
        double sum = 0.0, squares = 0.0;
        const int Draws = 20000;
        for (var i = 0; i < Draws; i++)
        {
            var stance = DialStance.FromDegrees(Draw(drawn[0]) + Draw(drawn[1]) + Draw(drawn[2]), Draw(drawn[3]), Draw(drawn[4]));
            var dial = new FlatDial(Vigo.Point.Latitude, Latitude.FromDegrees(Vigo.Point.Latitude.Degrees + Draw(drawn[5])));
            var fast = DialError.FastMinutes(dial, stance, Vigo.Point.Latitude, chain.HourAngle, chain.Declination)!.Value;
            sum += fast;
            squares += fast * fast;
        }

        var drawnDeviation = Math.Sqrt(squares / Draws - Square(sum / Draws));
        var firstOrder = Math.Sqrt(drawn.Sum(name => Square(Line(chain, name).Contribution)));

        // 2 %: 20,000 draws know a deviation to 0.5 %, and the model bends a little over two degrees.
        Assert.Equal(firstOrder, drawnDeviation, 0.02 * firstOrder);
    }

    [Fact]
    public void What_was_not_measured_is_named_and_not_counted()
    {
        var chain = Assert.IsType<ClockReading.One>(ClockFromDial.Read(Vigo, Day, DialTime.FromHours(12))).Chain;
        Assert.Equal(
            [
                "The dial is taken to be made for this latitude; the doubt of its scale and style is not counted.",
                "The dial is taken to stand level and true; the doubt of that is not counted.",
            ],
            chain.TakenAsRight);
        Assert.Equal(["reading the plate", "blurred edge of the shadow", "longitude of the place"], chain.Budget.Lines.Select(line => line.Quantity.Name));
    }

    private static ReadingChain ChainFor(DialProfile profile) =>
        Assert.IsType<ClockReading.One>(ClockFromDial.Read(Vigo, Day, DialTime.FromHours(10), profile)).Chain;

    private static BudgetLine Line(ReadingChain chain, string name) => chain.Budget.Lines.Single(line => line.Quantity.Name == name);

    private static double Square(double x) => x * x;
}
