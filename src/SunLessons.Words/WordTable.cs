using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Text.Json.Nodes;

namespace SunLessons.Words;

/// <summary>
/// What the program says to people, by key, in one language. A key that a language lacks is said in English. The tables are JSON files of this project, one a
/// language, so that they are the same on every system and in a page. Safe between threads.
/// </summary>
public sealed class WordTable
{
    /// <summary>The language that has every key.</summary>
    public const string First = "en";

    private static readonly ConcurrentDictionary<string, WordTable> Known = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _own;
    private readonly WordTable? _fallback;
    private readonly IReadOnlyList<SentencePattern> _patterns;

    private WordTable(string language)
    {
        Language = language;
        _fallback = language == First ? null : In(First);
        using var table = Open(language)!;
        _own = JsonNode.Parse(table)!.AsObject().ToDictionary(pair => pair.Key, pair => (string)pair.Value!, StringComparer.Ordinal);
        _patterns = [.. _own.Where(pair => SentencePattern.Marks.Any(mark => pair.Key.StartsWith(mark, StringComparison.Ordinal))).Select(pair => new SentencePattern(pair.Key, pair.Value)).OrderByDescending(pattern => pattern.Length)];
    }

    /// <summary>The languages that have a table, by their two letters, English first.</summary>
    public static IReadOnlyList<string> Languages { get; } =
        [.. Assembly.GetExecutingAssembly().GetManifestResourceNames().Select(name => name.Split('.')[^2]).OrderBy(name => name == First ? 0 : 1).ThenBy(name => name, StringComparer.Ordinal)];

    /// <summary>The language, by its two letters.</summary>
    public string Language { get; }

    /// <summary>The keys that this language has itself.</summary>
    public IEnumerable<string> Keys => _own.Keys;

    /// <summary>The text of a key; the key itself where no language has it.</summary>
    public string this[string key] => _own.TryGetValue(key, out var text) ? text : _fallback?[key] ?? key;

    /// <summary>The table of a language; English for a language that has none. A country after the language is passed over: es-MX is es.</summary>
    public static WordTable In(string language)
    {
        ArgumentNullException.ThrowIfNull(language);
        var two = language.Split('-', '_')[0].ToLowerInvariant();
        return Known.GetOrAdd(Languages.Contains(two) ? two : First, known => new WordTable(known));
    }

    /// <summary>The text of a key with values in its places {0}, {1}.</summary>
    public string Say(string key, params object[] values) => string.Format(CultureInfo.CurrentCulture, this[key], values);

    /// <summary>The translation of an English sentence of the code; null where there is none.</summary>
    public string? Translation(string english) => _own.GetValueOrDefault(english);

    /// <summary>A finished English text in this language: as a whole, or by the pattern that it follows; as it is where neither is known.</summary>
    public string Translated(string english)
    {
        ArgumentNullException.ThrowIfNull(english);
        return _own.TryGetValue(english, out var whole) ? whole
            : _patterns.Select(pattern => pattern.Of(english, this)).FirstOrDefault(text => text is not null) ?? english;
    }

    /// <summary>All texts whose keys begin alike, for a script in a page.</summary>
    public IReadOnlyDictionary<string, string> Under(params string[] prefixes) => _own.Keys.Union(_fallback?._own.Keys ?? Enumerable.Empty<string>())
        .Where(key => prefixes.Any(prefix => key.StartsWith(prefix, StringComparison.Ordinal)))
        .Order(StringComparer.Ordinal)
        .ToDictionary(key => key, key => this[key], StringComparer.Ordinal);

    private static Stream? Open(string language)
    {
        var assembly = Assembly.GetExecutingAssembly();
        return assembly.GetManifestResourceStream(assembly.GetManifestResourceNames().First(name => name.EndsWith($".{language}.json", StringComparison.Ordinal)));
    }
}
