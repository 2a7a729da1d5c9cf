using System.CommandLine;
using SunLessons.CivilTime;
using SunLessons.Magnetism;
using SunLessons.Places;

namespace SunLessons.App.Verbs;

/// <summary>Where the dial stands, as every verb takes it: a town's name, or latitude, longitude and clock zone.</summary>
public sealed class PlaceOptions
{
    private readonly Option<string?> _place = new("--place") { Description = "A town of the lessons or of the time-zone database, such as Vigo or \"St. John's\".", HelpName = "town" };
    private readonly Option<string?> _latitude = new("--latitude") { Description = "Instead of a town: degrees, north positive, such as 42.24, \"42° 14' N\" or -45.87.", HelpName = "degrees" };
    private readonly Option<string?> _longitude = new("--longitude") { Description = "Degrees, east positive, such as -8.72 or \"8.72 W\".", HelpName = "degrees" };
    private readonly Option<string?> _zone = new("--zone") { Description = "The clock's zone, such as Europe/Madrid or UTC+5:45.", HelpName = "zone" };
    private readonly Option<string?> _height = new("--height") { Description = "Height above the sea, such as 1400; a town's own, or 0, where it is left out.", HelpName = "metres" };

    /// <summary>Adds the options to a verb.</summary>
    /// <param name="verb">The verb.</param>
    /// <param name="withHeight">Whether its answer depends on the height.</param>
    public void AddTo(Command verb, bool withHeight = false)
    {
        verb.Options.Add(_place);
        verb.Options.Add(_latitude);
        verb.Options.Add(_longitude);
        verb.Options.Add(_zone);
        if (withHeight)
        {
            verb.Options.Add(_height);
        }
    }

    /// <summary>Whether the clock's zone is known: by the town or by its own option.</summary>
    public bool ZoneIsKnown(ParseResult parsed) => parsed.GetValue(_place) is not null || parsed.GetValue(_zone) is not null;

    /// <summary>Whether the zone was given by its own option.</summary>
    public bool ZoneWasTyped(ParseResult parsed) => parsed.GetValue(_zone) is not null;

    /// <summary>The place that was named.</summary>
    /// <param name="parsed">The call.</param>
    /// <param name="zoneIsNeeded">Whether the answer needs a clock; without that need the zone may be left out and is UTC.</param>
    /// <exception cref="BadInputException">It was not named, named twice, or a part cannot be used.</exception>
    public Place Read(ParseResult parsed, bool zoneIsNeeded = true)
    {
        var (name, latitude, longitude, zone) = (parsed.GetValue(_place), parsed.GetValue(_latitude), parsed.GetValue(_longitude), parsed.GetValue(_zone));
        if (name is not null)
        {
            if (latitude is not null || longitude is not null || zone is not null)
            {
                throw new BadInputException("The place was given twice; give either --place, or --latitude, --longitude and --zone.");
            }

            return Gazetteer.Find(name) switch
            {
                PlaceAnswer.Found found => AtHeight(found.Place, parsed),
                PlaceAnswer.Unknown unknown => throw new BadInputException(unknown.Message),
                var other => throw new InvalidOperationException($"A kind of answer was added and not handled: {other}."),
            };
        }

        if (latitude is null || longitude is null || (zone is null && zoneIsNeeded))
        {
            throw new BadInputException("Where the dial stands is missing; give --place with a town, or --latitude and --longitude in degrees"
                + (zoneIsNeeded ? " and --zone with the clock's zone, such as --latitude 42.24 --longitude -8.72 --zone Europe/Madrid." : ", such as --latitude 42.24 --longitude -8.72."));
        }

        if (!CoordinateText.TryReadLatitude(latitude, out var north, out var problem) || !CoordinateText.TryReadLongitude(longitude, out var east, out problem))
        {
            throw new BadInputException(problem!);
        }

        return CivilZones.Find(zone ?? "UTC") switch
        {
            ZoneAnswer.Found found => AtHeight(new Place("the given place", new GeoPoint(north, east), found.Zone.Id), parsed),
            ZoneAnswer.Unknown unknown => throw new BadInputException(unknown.Message),
            var other => throw new InvalidOperationException($"A kind of answer was added and not handled: {other}."),
        };
    }

    // Where the verb takes no height, the option has no value either.
    private Place AtHeight(Place place, ParseResult parsed) => parsed.GetValue(_height) is { } height
        ? place with
        {
            Point = place.Point with
            {
                HeightMeters = Typed.Number(
                    height, "Height", "metres", MagneticField.LowestHeightMeters, MagneticField.GreatestHeightMeters, "write metres above the sea, such as 1400"),
            },
        }
        : place;
}
