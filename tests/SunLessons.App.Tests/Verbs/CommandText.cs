using System.Text.RegularExpressions;

namespace SunLessons.App.Tests.Verbs;

/// <summary>A call as it is written in a terminal, double quotes included.</summary>
internal static partial class CommandText
{
    public static string[] Split(string call) =>
        [.. Words().Matches(call).Select(word => word.Groups["quoted"].Success ? word.Groups["quoted"].Value : word.Value)];

    [GeneratedRegex("""
        "(?<quoted>[^"]*)"|[^\s"]+
        """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Words();
}
