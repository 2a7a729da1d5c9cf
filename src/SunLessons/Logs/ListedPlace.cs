namespace SunLessons.Logs;

/// <summary>One entry of the list of places with compass corrections that is printed in or engraved on an old instrument.</summary>
/// <param name="Name">The place as printed.</param>
/// <param name="Point">Where it is.</param>
/// <param name="Printed">The magnetic declination that the list gives it, east positive.</param>
public sealed record ListedPlace(string Name, GeoPoint Point, MagneticDeclination Printed);
