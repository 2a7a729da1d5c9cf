using System.ComponentModel;
using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;

namespace SunLessons.Notebooks.Review;

/// <summary>
/// The spelling of a language, by the program hunspell with its dictionary en_GB or es_ES (Debian packages hunspell, hunspell-en-gb and hunspell-es). It is no
/// part of this program: where it is missing, nothing is said about spelling.
/// </summary>
public sealed partial class SpellingDictionary
{
    private static readonly Dictionary<string, string> Names = new(StringComparer.Ordinal) { ["en"] = "en_GB", ["es"] = "es_ES" };

    private SpellingDictionary(string name) => Name = name;

    /// <summary>The dictionary's name, such as <c>es_ES</c>.</summary>
    public string Name { get; }

    /// <summary>The dictionary of a language, by its two letters; null where hunspell does not run, or has none for the language.</summary>
    public static async Task<SpellingDictionary?> OfAsync(string language)
    {
        ArgumentNullException.ThrowIfNull(language);
        if (!Names.TryGetValue(language, out var name))
        {
            return null;
        }

        var dictionary = new SpellingDictionary(name);
        try
        {
            // Without its dictionary it says so where errors go, and ends.
            return (await dictionary.RunAsync([])).Errors.Length == 0 ? dictionary : null;
        }
        catch (Win32Exception)
        {
            return null;
        }
    }

    /// <summary>The words of a text.</summary>
    public static IEnumerable<string> WordsOf(string text) => Word().Matches(text).Select(word => word.Value.Replace('’', '\''));

    /// <summary>The words that the dictionary does not know, each once, in their order.</summary>
    /// <exception cref="IOException">hunspell failed.</exception>
    public async Task<IReadOnlyList<string>> UnknownAsync(IEnumerable<string> words)
    {
        var (unknown, errors) = await RunAsync([.. words.Distinct()]);
        return errors.Length == 0 ? unknown : throw new IOException($"hunspell failed with its dictionary {Name}: {errors.Trim()}");
    }

    private async Task<(IReadOnlyList<string> Unknown, string Errors)> RunAsync(IReadOnlyList<string> words)
    {
        var start = new ProcessStartInfo("hunspell", ["-d", Name, "-i", "utf-8", "-l"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            StandardOutputEncoding = Encoding.UTF8,
        };
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        try
        {
            await process.StandardInput.WriteAsync(string.Concat(words.Select(word => word + "\n")));
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It has ended already; what it wrote says why.
        }

        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(1));
        await process.WaitForExitAsync(patience.Token);
        return ((await output).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries), await errors);
    }

    [GeneratedRegex(@"(?<![\p{L}\d])\p{L}+(?:['’]\p{L}+)*")]
    private static partial Regex Word();
}
