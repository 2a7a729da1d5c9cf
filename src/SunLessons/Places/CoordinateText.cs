using System.Globalization;
using System.Text.RegularExpressions;

namespace SunLessons.Places;

/// <summary>
/// Latitude and longitude as people write them: <c>42.24</c>, <c>42,24</c>, <c>-8.72</c>, <c>8.72 W</c>, <c>W 8.72</c>,
/// <c>42° 14′ 24″ N</c>, <c>42 14 24 N</c>. North and east are positive; a letter and a minus sign together are refused,
/// because one of them must be a slip.
/// </summary>
public static partial class CoordinateText
{
    /// <summary>Reads a latitude, or says in one sentence what is allowed.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="latitude">The latitude; the equator where the text cannot be used.</param>
    /// <param name="problem">The sentence; null where the text can be used.</param>
    public static bool TryReadLatitude(string text, out Latitude latitude, out string? problem)
    {
        latitude = default;
        if (Read(text, "N", "S", "Latitude", "-90 to +90 degrees (north positive)", "42.24 or 42° 14′ N", out var degrees) is { } sentence)
        {
            problem = sentence;
            return false;
        }

        try
        {
            latitude = Latitude.FromDegrees(degrees);
            problem = null;
            return true;
        }
        catch (ArgumentOutOfRangeException outside)
        {
            problem = Sentence(outside);
            return false;
        }
    }

    /// <summary>Reads a longitude, or says in one sentence what is allowed.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="longitude">The longitude; the prime meridian where the text cannot be used.</param>
    /// <param name="problem">The sentence; null where the text can be used.</param>
    public static bool TryReadLongitude(string text, out Longitude longitude, out string? problem)
    {
        longitude = default;
        if (Read(text, "E", "W", "Longitude", "-180 to +180 degrees (east positive)", "-8.72 or 8° 43′ W", out var degrees) is { } sentence)
        {
            problem = sentence;
            return false;
        }

        try
        {
            longitude = Longitude.FromDegrees(degrees);
            problem = null;
            return true;
        }
        catch (ArgumentOutOfRangeException outside)
        {
            problem = Sentence(outside);
            return false;
        }
    }

    private static string? Read(string text, string positive, string negative, string name, string allowed, string example, out double degrees)
    {
        degrees = 0.0;
        var match = Pattern().Match(text.Trim().ToUpperInvariant().Replace('\u2212', '-').Replace(',', '.'));
        var letter = match.Groups["before"].Value + match.Groups["after"].Value;
        var usable = match.Success && letter.Length <= 1 && (letter.Length == 0 || letter == positive || letter == negative);
        if (!usable)
        {
            return $"{name} “{text.Trim()}” cannot be read; {allowed} are allowed: write it like {example}.";
        }

        var minus = match.Groups["minus"].Success;
        if (minus && letter.Length == 1)
        {
            return $"{name} “{text.Trim()}” has both a minus sign and the letter {letter}; write only one of them, like {example}.";
        }

        var minutes = Part(match.Groups["minutes"]);
        var seconds = Part(match.Groups["seconds"]);
        if (minutes >= 60.0 || seconds >= 60.0)
        {
            return $"{name} “{text.Trim()}” has minutes or seconds of 60 or more; they go from 0 to 59: write it like {example}.";
        }

        degrees = Part(match.Groups["degrees"]) + minutes / 60.0 + seconds / 3600.0;
        if (minus || letter == negative)
        {
            degrees = -degrees;
        }

        return null;
    }

    private static double Part(Group group) => group.Success ? double.Parse(group.Value, CultureInfo.InvariantCulture) : 0.0;

    /// <summary>The sentence without the parameter's name that .NET appends.</summary>
    private static string Sentence(ArgumentOutOfRangeException outside) => outside.Message.Split(" (Parameter ", 2)[0];

    [GeneratedRegex("""
        ^(?<before>[NSEW])?\s*(?<minus>-)?\+?\s*(?<degrees>\d{1,4}(\.\d+)?)\s*[°D]?
        (\s*(?<minutes>\d{1,3}(\.\d+)?)\s*['′’M]?
        (\s*(?<seconds>\d{1,3}(\.\d+)?)\s*(["″”]|''|S(?=\s*[NSEW]$))?)?)?
        \s*(?<after>[NSEW])?$
        """, RegexOptions.IgnorePatternWhitespace | RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}
