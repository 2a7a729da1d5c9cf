// Field evaluations a second, one thread, beside a peer in the same run. An evaluation: the field at a place and moment with its yearly change.
using System.Globalization;
using SunLessons;
using SunLessons.Magnetism;

Timing.Machine("one thread; an evaluation is the field's three parts and their yearly change at a place and moment");
var places = Places();
var vigo = GeoPoint.FromDegrees(42.24, -8.72);
var check = GeomagneticModel.Wmm2025.At(vigo, 2026.5).Field;
Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"check, Vigo, 2026.5: WMM2025 {check.Declination.Degrees:0.0000} degrees, H {check.HorizontalNanotesla:0.0} nT"));
var sink = 0.0;
const int Count = 500_000;
Rate("GeomagneticModel.At, WMM2025 (degree 12)", GeomagneticModel.Wmm2025, 2025.0, 5.0);
Rate("GeomagneticModel.At, IGRF-14, 1900 to 2025 (degree 10, from 1995 on 13)", GeomagneticModel.Igrf14, 1900.0, 125.0);
Timing.Rate("MagneticField.At, the whole answer with uncertainty and zone, 1900 to 2030", Count, () =>
{
    for (var i = 0; i < Count; i++)
    {
        sink += ((NorthAnswer.Known)MagneticField.At(places[i & 65535], 1900.0 + i % 1300 * 0.1)).StandardDeviation.Radians;
    }
});
Timing.Peer("node", "peer.mjs");
Console.WriteLine(Timing.Load());
if (double.IsNaN(sink))
{
    Console.WriteLine("not a number");
}

void Rate(string name, GeomagneticModel model, double firstYear, double years) => Timing.Rate(name, Count, () =>
{
    for (var i = 0; i < Count; i++)
    {
        sink += model.At(places[i & 65535], firstYear + years * (i % 997 / 997.0)).Field.NorthNanotesla;
    }
});

// Places all over the world in no order, the same in every run.
static GeoPoint[] Places()
{
    var random = new Random(1);
    return [.. Enumerable.Range(0, 65536).Select(_ => GeoPoint.FromDegrees(-90.0 + 180.0 * random.NextDouble(), -180.0 + 360.0 * random.NextDouble(), 500.0 * random.NextDouble()))];
}
