// Draws per second of a whole reading chain: a pocket dial for 49 degrees, set 14 degrees askew, read at Vigo on 21 June 2026, every cause of doubt drawn.
// Run: dotnet run -c Release --project tests/benchmarks/uncertainty [draws]
using System.Globalization;
using NodaTime;
using SunLessons;
using SunLessons.Places;
using SunLessons.Readings;
using SunLessons.Uncertainty;

var draws = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : MonteCarlo.DefaultDraws;
var profile = new DialProfile
{
    ScaleLatitude = Latitude.FromDegrees(49.0),
    Setting = new DialSetting.NoonLine(Azimuth.FromDegrees(14.0)) { Doubt = ReadingComponents.CompassReading },
    DateByTable = true,
};
var place = Gazetteer.Towns.Single(p => p.Name == "Vigo");
var chain = ((ClockReading.One)ClockFromDial.Read(place, new LocalDate(2026, 6, 21), DialTime.FromHoursMinutes(11, 39.2), profile)).Chain;
var (inputs, model) = ReadingMonteCarlo.ModelOf(chain, profile);
Timing.Machine(string.Create(CultureInfo.InvariantCulture, $"{inputs.Count} causes, {draws:#,##0} draws; draws, sorting and both moments timed together"));
foreach (var threads in new[] { 1, 2 })
{
    MonteCarlo? drawn = null;
    var (clock, processor) = Timing.Runs(7, () => drawn = MonteCarlo.Of("minutes", inputs, model, draws, threads: threads));
    Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{threads} thread(s): median {draws / clock[3] / 1e6:0.00} million draws a second, best {draws / clock[0] / 1e6:0.00}; processor time median {processor[3]:0.000} s, least {processor[0]:0.000} s; {drawn!.Mean:0.00000} ± {drawn.StandardUncertainty:0.00000} min"));
}

Console.WriteLine(FirstOrderCheck.Of(chain.Budget, MonteCarlo.Of("minutes", inputs, model, draws)).Sentence);
Console.WriteLine(Timing.Load());
