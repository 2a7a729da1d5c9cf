using System.Text.Json;
using System.Text.Json.Nodes;
using SunLessons.CivilTime;
using SunLessons.Notebooks;
using SunLessons.Places;

namespace SunLessons.Web.Sessions;

/// <summary>
/// What holds for all lessons of one learner: the place. Kept in <c>settings.json</c> in the learner's folder by atomic replace.
/// A damaged file is set aside by name and the default taken; nothing is deleted.
/// </summary>
public sealed class LearnerSettings
{
    private readonly Lock _lock = new();
    private readonly string _file;
    private Place _place;

    /// <summary>Reads the settings of a learner's folder; the first of the eight towns of the lessons that has a puzzle of its own is the default.</summary>
    public LearnerSettings(string folder)
    {
        _file = Path.Combine(folder, "settings.json");
        _place = ReadPlace(_file) ?? DefaultPlace;
    }

    /// <summary>The place that the lessons start with until the learner names their own.</summary>
    public static Place DefaultPlace { get; } = Gazetteer.Towns.First(town => town.Name == "Vigo");

    /// <summary>Raised after the place changed, from any thread.</summary>
    public event Action? Changed;

    /// <summary>The learner's place.</summary>
    public Place Place
    {
        get
        {
            lock (_lock)
            {
                return _place;
            }
        }
    }

    /// <summary>Moves the learner to another place and keeps it.</summary>
    /// <exception cref="IOException">It could not be written; the place holds until the program ends.</exception>
    public void MoveTo(Place place)
    {
        lock (_lock)
        {
            _place = place;
        }

        Changed?.Invoke();
        Directory.CreateDirectory(Path.GetDirectoryName(_file)!);
        SafeFile.Replace(_file, JsonSerializer.SerializeToUtf8Bytes(new JsonObject { ["place"] = ToJson(place) }, Indented));
    }

    /// <summary>A place as the pages tell a kernel of it: names with their units.</summary>
    public static JsonObject ToJson(Place place) => new()
    {
        ["name"] = place.Name,
        ["latitude_degrees"] = Math.Round(place.Point.Latitude.Degrees, 9),
        ["longitude_degrees"] = Math.Round(place.Point.Longitude.Degrees, 9),
        ["zone"] = place.ZoneId,
    };

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    private static Place? ReadPlace(string file)
    {
        if (!File.Exists(file))
        {
            return null;
        }

        try
        {
            var place = JsonNode.Parse(File.ReadAllText(file))!["place"]!;
            var zone = place["zone"]!.GetValue<string>();
            return CivilZones.Find(zone) is ZoneAnswer.Found
                ? new Place(
                    place["name"]!.GetValue<string>(),
                    GeoPoint.FromDegrees(place["latitude_degrees"]!.GetValue<double>(), place["longitude_degrees"]!.GetValue<double>()),
                    zone)
                : null;
        }
        catch (Exception damage) when (damage is JsonException or InvalidOperationException or NullReferenceException or IOException or ArgumentOutOfRangeException or FormatException)
        {
            File.Move(file, file + ".damaged", overwrite: true);
            return null;
        }
    }
}
