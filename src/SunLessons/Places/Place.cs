using SunLessons.CivilTime;

namespace SunLessons.Places;

/// <summary>A named point of the Earth and the zone whose law its clocks keep.</summary>
/// <param name="Name">The name to print, in Latin letters with their accents.</param>
/// <param name="Point">Latitude (north positive), longitude (east positive) and height.</param>
/// <param name="ZoneId">Id in the time-zone database, such as <c>Europe/Madrid</c>, or a fixed offset such as <c>UTC+5:45</c>.</param>
public sealed record Place(string Name, GeoPoint Point, string ZoneId)
{
    /// <summary>The country's English short name, or empty where none is known (a place typed by its coordinates).</summary>
    public string Country { get; init; } = "";

    /// <summary>The zone itself.</summary>
    /// <exception cref="ArgumentException">The zone id is unknown; the message names near matches.</exception>
    public CivilZone Zone => CivilZones.Get(ZoneId);

    /// <summary>Such as <c>Vigo (Spain), 42.24° N 8.72° W</c>.</summary>
    public override string ToString() => Country.Length == 0 ? $"{Name}, {Point}" : $"{Name} ({Country}), {Point}";
}
