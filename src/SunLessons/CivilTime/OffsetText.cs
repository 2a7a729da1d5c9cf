using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;

namespace SunLessons.CivilTime;

/// <summary>Writes and reads offsets from UTC as people write them: <c>UTC+5:45</c>, <c>UTC-3:30</c>, <c>UTC+0</c>.</summary>
internal static partial class OffsetText
{
    /// <summary>Such as <c>UTC+5:45</c>; seconds only where there are any.</summary>
    public static string Utc(Offset offset)
    {
        var seconds = Math.Abs(offset.Seconds);
        var text = "UTC" + (offset.Seconds < 0 ? "-" : "+") + (seconds / 3600).ToString(CultureInfo.InvariantCulture);
        if (seconds % 3600 != 0)
        {
            text += ":" + (seconds / 60 % 60).ToString("00", CultureInfo.InvariantCulture);
        }

        return seconds % 60 != 0 ? text + ":" + (seconds % 60).ToString("00", CultureInfo.InvariantCulture) : text;
    }

    /// <summary>Reads <c>+5:45</c>, <c>UTC+05:45</c>, <c>UTC-3</c>, <c>UTC</c>; within the 18 hours that NodaTime allows.</summary>
    public static bool TryRead(string text, out Offset offset)
    {
        offset = Offset.Zero;
        var match = Shape().Match(text.Trim());
        if (!match.Success || text.Trim().Length == 0)
        {
            return false;
        }

        if (!match.Groups["hours"].Success)
        {
            return true;
        }

        var hours = int.Parse(match.Groups["hours"].ValueSpan, CultureInfo.InvariantCulture);
        var minutes = match.Groups["minutes"].Success ? int.Parse(match.Groups["minutes"].ValueSpan, CultureInfo.InvariantCulture) : 0;
        if (minutes >= 60 || hours * 60 + minutes > 18 * 60)
        {
            return false;
        }

        var seconds = (hours * 60 + minutes) * 60;
        offset = Offset.FromSeconds(match.Groups["sign"].Value == "+" ? seconds : -seconds);
        return true;
    }

    [GeneratedRegex(@"^(?:UTC)?(?:(?<sign>[+\-\u2212])(?<hours>\d{1,2})(?::?(?<minutes>\d{2}))?)?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Shape();
}
