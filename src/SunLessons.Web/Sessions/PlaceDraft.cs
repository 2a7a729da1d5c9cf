using SunLessons.Places;
using SunLessons.Words;

namespace SunLessons.Web.Sessions;

/// <summary>What was typed for a place, field by field, with one sentence for each field that cannot be used.</summary>
public sealed class PlaceDraft
{
    /// <summary>The name; any text.</summary>
    public string Name { get; set; } = "";

    /// <summary>The latitude as typed.</summary>
    public string Latitude { get; set; } = "";

    /// <summary>The longitude as typed.</summary>
    public string Longitude { get; set; } = "";

    /// <summary>The zone's name as typed.</summary>
    public string Zone { get; set; } = "";

    /// <summary>What is wrong with the latitude; nothing when it can be used.</summary>
    public string? LatitudeProblem { get; private set; }

    /// <summary>What is wrong with the longitude; nothing when it can be used.</summary>
    public string? LongitudeProblem { get; private set; }

    /// <summary>What is wrong with the zone; nothing when it can be used.</summary>
    public string? ZoneProblem { get; private set; }

    /// <summary>A draft filled from a place, as a language writes it.</summary>
    public static PlaceDraft From(Place place, LanguageCulture culture) => new()
    {
        Name = place.Name,
        Latitude = culture.Retold(place.Point.Latitude.ToString()),
        Longitude = culture.Retold(place.Point.Longitude.ToString()),
        Zone = place.ZoneId,
    };

    /// <summary>The place that was typed, or nothing; the problems then say why. What was typed stays as it is.</summary>
    public Place? Read(LanguageCulture culture)
    {
        var name = Name.Trim().Length > 0 ? Name : culture.Words.Translated("My place");
        var typed = PlaceText.Read(name, culture.InEnglish(Latitude), culture.InEnglish(Longitude), Zone);
        (LatitudeProblem, LongitudeProblem, ZoneProblem) = (culture.Complaint(typed.LatitudeProblem, Latitude), culture.Complaint(typed.LongitudeProblem, Longitude), culture.Complaint(typed.ZoneProblem, Zone));
        return typed.Place;
    }
}
