using System.Text;

namespace SunLessons.CivilTime;

/// <summary>
/// Finds what a person probably meant: names compared without case, accents, spaces and punctuation,
/// then by the number of single-letter slips between them.
/// </summary>
internal static class NearMatches
{
    // Latin letters with marks that occur in town names. Not String.Normalize: the program runs with the
    // invariant culture, where normalising letters outside ASCII is not promised, and it leaves ø and ł as they are.
    private const string Marked = "àáâãäåāăąçćĉċčďđèéêëēĕėęěĝğġģĥħìíîïĩīĭįıĵķĺļľłñńņňòóôõöøōŏőŕŗřśŝşšșţťŧțùúûüũūŭůűųŵýÿŷźżžð";
    private const string Plain = "aaaaaaaaacccccddeeeeeeeeegggghhiiiiiiiiijkllllnnnnooooooooorrrsssssttttuuuuuuuuuuwyyyzzzd";

    /// <summary>The name in small letters without accents, spaces and punctuation: <c>St. John's</c> gives <c>stjohns</c>.</summary>
    public static string Fold(string name)
    {
        var folded = new StringBuilder(name.Length);
        foreach (var letter in name)
        {
            var small = char.ToLowerInvariant(letter);
            var at = Marked.IndexOf(small, StringComparison.Ordinal);
            if (at >= 0)
            {
                folded.Append(Plain[at]);
            }
            else if (small == 'æ')
            {
                folded.Append("ae");
            }
            else if (small == 'œ')
            {
                folded.Append("oe");
            }
            else if (small == 'ß')
            {
                folded.Append("ss");
            }
            else if (char.IsLetterOrDigit(small))
            {
                folded.Append(small);
            }
        }

        return folded.ToString();
    }

    /// <summary>
    /// The candidates nearest to what was typed, best first: those that hold it as a part, then those few slips away
    /// (one slip in three letters at most). Each candidate may be known by several spellings.
    /// </summary>
    public static IReadOnlyList<T> Of<T>(string typed, IEnumerable<T> candidates, Func<T, IEnumerable<string>> spellings, int most = 5)
    {
        var wanted = Fold(typed);
        if (wanted.Length == 0)
        {
            return [];
        }

        var scored = new List<(int Score, int Order, T Candidate)>();
        var order = 0;
        foreach (var candidate in candidates)
        {
            order++;
            var best = int.MaxValue;
            foreach (var spelling in spellings(candidate))
            {
                var known = Fold(spelling);
                var score = wanted.Length >= 3 && known.StartsWith(wanted, StringComparison.Ordinal) ? 0
                    : wanted.Length >= 3 && known.Contains(wanted, StringComparison.Ordinal) ? 1
                    : Slips(wanted, known) is var slips && slips * 3 <= Math.Max(wanted.Length, 3) ? 1 + slips
                    : int.MaxValue;
                best = Math.Min(best, score);
            }

            if (best < int.MaxValue)
            {
                scored.Add((best, order, candidate));
            }
        }

        if (scored.Count == 0)
        {
            return [];
        }

        // Beside a good match a poor one is noise: names that hold what was typed, or those with the fewest slips.
        var limit = Math.Max(1, scored.Min(s => s.Score));
        scored.RemoveAll(s => s.Score > limit);
        return [.. scored.OrderBy(s => s.Score).ThenBy(s => s.Order).Take(most).Select(s => s.Candidate)];
    }

    /// <summary>
    /// How many slips part two words: a letter added, lost, replaced, or two neighbours swapped
    /// (optimal string alignment distance; Damerau 1964, recurrence from memory).
    /// </summary>
    public static int Slips(string a, string b)
    {
        var beforeLast = new int[b.Length + 1];
        var last = new int[b.Length + 1];
        var row = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
        {
            last[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var replaced = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                row[j] = Math.Min(replaced, Math.Min(last[j], row[j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    row[j] = Math.Min(row[j], beforeLast[j - 2] + 1);
                }
            }

            (beforeLast, last, row) = (last, row, beforeLast);
        }

        return last[b.Length];
    }
}
