using System.Text.Json.Nodes;
using SunLessons.Cells.Parts;
using SunLessons.CivilTime;
using SunLessons.Places;

namespace SunLessons.Cells.Controls;

/// <summary>Where the learner is, for front ends that do not tell: a town to choose, or numbers and a zone to type.</summary>
public sealed class PlaceControl : Control
{
    private readonly Part _town;
    private readonly Part _latitude;
    private readonly Part _longitude;
    private readonly Part _zone;
    private readonly Part _status;

    internal PlaceControl(Lesson lesson)
        : base(lesson, "place", Worded($"My place"))
    {
        var here = lesson.Here;
        _town = Build.Options(Host, "DropdownModel", Worded($"My place"), Worded($"My place"), Names, TownIndex(here), OnTown);
        _latitude = NumberField(Worded($"Latitude (°, north +)"), -90, 90, here.Point.Latitude.Degrees, OnNumbers);
        _longitude = NumberField(Worded($"Longitude (°, east +)"), -180, 180, here.Point.Longitude.Degrees, OnNumbers);
        _zone = Build.Text(Host, Worded($"Time zone"), Worded($"Time zone"), here.ZoneId, "Europe/Madrid", _ => OnNumbers());
        _status = Build.Html(Host, Html.Status(Worded($"All figures are for {Speech.Culture.Retold(here.ToString())}."), "place"), "status");
        lesson.PlaceMoved += Follow;
    }

    /// <inheritdoc/>
    public override string Position => Speech.Culture.Retold(Lesson.Here.ToString());

    internal override double Start => 0;

    // A setting of the lesson, not something that an experiment moves.
    internal override IReadOnlyList<double> Stations => [Start];

    internal override IEnumerable<Part> Moving => [_town, _latitude, _longitude, _zone];

    private static string[] Names => [.. Gazetteer.Towns.Select(t => t.Name), Worded($"The numbers below")];

    internal override Part MakeRoot() => Build.Box(Host, "place", [_town, _latitude, _longitude, _zone, _status], Key);

    internal override void Retire()
    {
        base.Retire();
        Lesson.PlaceMoved -= Follow;
    }

    private protected override void CopyFrom(Control successor) => Follow();

    private static int TownIndex(Place place)
    {
        var town = Gazetteer.Towns.ToList().FindIndex(t => t.Point.Latitude == place.Point.Latitude && t.Point.Longitude == place.Point.Longitude && t.ZoneId == place.ZoneId);
        return town >= 0 ? town : Gazetteer.Towns.Count;
    }

    private static double Rounded(double degrees) => Math.Round(degrees, 6);

    private Part NumberField(string label, double min, double max, double value, Action changed)
    {
        var state = new JsonObject
        {
            ["value"] = Rounded(value),
            ["min"] = min,
            ["max"] = max,
            ["step"] = 0.01,
            ["description"] = label,
            ["disabled"] = false,
            ["layout"] = Build.Wide,
            ["continuous_update"] = false,
            ["_sunlessons_label"] = label,
        };
        return new Part(Host, "BoundedFloatTextModel", state, change =>
        {
            if (Json.Number(change["value"]) is not null)
            {
                changed();
            }
        });
    }

    private void OnTown(int chosen)
    {
        if (chosen >= 0 && chosen < Gazetteer.Towns.Count)
        {
            Lesson.MoveTo(Gazetteer.Towns[chosen]);
        }
    }

    private void OnNumbers()
    {
        try
        {
            var zone = (Json.Text(_zone.Get("value")) ?? "").Trim();
            _ = CivilZones.Get(zone);
            var point = GeoPoint.FromDegrees(Json.Number(_latitude.Get("value")) ?? double.NaN, Json.Number(_longitude.Get("value")) ?? double.NaN);
            var town = Gazetteer.Towns.FirstOrDefault(t => t.Point.Latitude == point.Latitude && t.Point.Longitude == point.Longitude && t.ZoneId == zone);
            Lesson.MoveTo(town ?? new Place(Worded($"my place"), point, zone));
        }
        catch (ArgumentException error)
        {
            _status.Set(("value", Html.Status(PlainSentence.Of(error), "problem")));
        }
    }

    private void Follow()
    {
        var here = Lesson.Here;
        _town.Set(("index", TownIndex(here)));
        _latitude.Set(("value", Rounded(here.Point.Latitude.Degrees)));
        _longitude.Set(("value", Rounded(here.Point.Longitude.Degrees)));
        _zone.Set(("value", here.ZoneId));
        _status.Set(("value", Html.Status(Worded($"All figures are for {Speech.Culture.Retold(here.ToString())}."), "place")));
    }
}
