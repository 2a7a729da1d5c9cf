using SunLessons.Logs;
using SunLessons.Places;

namespace SunLessons.Tests.Logs;

/// <summary>The demonstration data of Logs: they are what DemoFiles makes, and they tell what their README says.</summary>
public class DemoData
{
    private static string File(string name) => System.IO.File.ReadAllText(Checkout.Path("datasets-demo", name)).ReplaceLineEndings("\n");

    [Fact]
    public void The_log_is_what_it_is_said_to_be_made_of()
    {
        var (file, made) = (ObservationLog.Parse(File("dunedin-log.csv")), ObservationLog.Parse(DemoFiles.Log()));
        Assert.Equal(30, file.Observations.Count);
        foreach (var (kept, again) in file.Observations.Zip(made.Observations))
        {
            // Rounded to half a minute: a change of the Sun's place in its last digits may turn one rounding.
            Assert.Equal(again.Shown.MinutesOfDay, kept.Shown.MinutesOfDay, 0.51);
            Assert.Equal(again with { Shown = kept.Shown }, kept);
        }

        Assert.Equal(DemoFiles.List(), File("old-dial-list.csv"));
    }

    [Fact]
    public void The_log_gives_away_the_planted_faults_within_the_uncertainty_that_it_states()
    {
        var log = LogResiduals.Of(ObservationLog.Parse(File("dunedin-log.csv")), Gazetteer.Towns.Single(p => p.Name == "Dunedin"));
        Assert.Empty(log.Unused);
        FaultPrior[] trusted =
        [
            new(Fault.ClockSlow, 0, 0, "time signal"), new(Fault.StyleNorthward, 0, 0, "protractor"), new(Fault.LinesNorthward, 0, 0, "plate measured"),
        ];
        var fit = FaultFit.Of(log, measured: trusted);
        foreach (var (fault, planted) in new[] { (Fault.TwistClockwise, DemoFiles.TwistDegrees), (Fault.EastEdgeRaised, DemoFiles.EastEdgeDegrees), (Fault.NorthEdgeRaised, 0.0) })
        {
            // Three standard uncertainties: the noise was drawn once.
            var finding = fit[fault]!;
            Assert.InRange(finding.StandardUncertainty, 0.02, 0.4);
            Assert.Equal(planted, finding.Value, 3.0 * finding.StandardUncertainty);
        }

        var wild = Assert.Single(fit.Readings, r => r.IsWild);
        Assert.Equal(DemoFiles.MisreadLine, wild.Reading.Observation.Line);
        Assert.Contains(fit.Sentences, s => s.EndsWith("It is an hour off: the next hour line may have been read.", StringComparison.Ordinal));
        Assert.Empty(fit.Slips);
    }

    [Fact]
    public void The_list_is_dated_and_the_engravers_slip_is_found()
    {
        var age = InstrumentAge.Of(PrintedList.Parse(File("old-dial-list.csv"), Angle.FromDegrees(1.0)), latestYear: 1990.0);
        Assert.True(age.Fits);
        Assert.Contains(age.Region, span => span.FromYear <= DemoFiles.ListedYear && span.ToYear >= DemoFiles.ListedYear);
        Assert.Equal(DemoFiles.SlippedPlace, Assert.Single(age.Disagreeing).Place.Name);
    }
}
