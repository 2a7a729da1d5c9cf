using System.Globalization;

namespace SunLessons.Words;

/// <summary>
/// A finished sentence with places for values, such as <c>science: add {0} min</c>, and its translation. The science speaks English and knows no language, and so do
/// the files and kernels of the program; their finished sentences are told again by their pattern.
/// </summary>
internal sealed class SentencePattern
{
    /// <summary>What the keys of such patterns begin with: who says the sentence.</summary>
    public static readonly string[] Marks = ["science: ", "program: "];

    private readonly string[] _fixed;
    private readonly string _translation;

    public SentencePattern(string key, string translation)
    {
        var english = key[Marks.First(mark => key.StartsWith(mark, StringComparison.Ordinal)).Length..];
        _translation = translation;

        // The places come in the order of their numbers, so the fixed words between them are all that is needed.
        var pieces = new List<string>();
        for (var place = 0; english.IndexOf($"{{{place}}}", StringComparison.Ordinal) is >= 0 and var at; place++)
        {
            pieces.Add(english[..at]);
            english = english[(at + 3)..];
        }

        _fixed = [.. pieces, english];
    }

    /// <summary>How many letters are fixed: the more, the closer the pattern.</summary>
    public int Length => _fixed.Sum(piece => piece.Length);

    /// <summary>The sentence in the other language; null when it does not follow this pattern.</summary>
    public string? Of(string sentence, WordTable words)
    {
        if (_fixed.Length == 1)
        {
            return sentence == _fixed[0] ? _translation : null;
        }

        if (!sentence.StartsWith(_fixed[0], StringComparison.Ordinal) || !sentence.EndsWith(_fixed[^1], StringComparison.Ordinal))
        {
            return null;
        }

        var values = new object[_fixed.Length - 1];
        var at = _fixed[0].Length;
        for (var place = 0; place < values.Length; place++)
        {
            var last = place == values.Length - 1;
            var end = last ? sentence.Length - _fixed[^1].Length : sentence.IndexOf(_fixed[place + 1], at, StringComparison.Ordinal);
            if (end <= at)
            {
                return null;
            }

            values[place] = words.Translated(WithDecimals(sentence[at..end], words["culture.decimal"]));
            at = end + _fixed[place + 1].Length;
        }

        return string.Format(CultureInfo.InvariantCulture, _translation, values);
    }

    // The science writes numbers with a point; between two digits it is one.
    public static string WithDecimals(string text, string sign)
    {
        if (sign == ".")
        {
            return text;
        }

        var letters = text.ToCharArray();
        for (var i = 1; i < letters.Length - 1; i++)
        {
            if (letters[i] == '.' && char.IsAsciiDigit(letters[i - 1]) && char.IsAsciiDigit(letters[i + 1]))
            {
                letters[i] = sign[0];
            }
        }

        return new string(letters);
    }
}
