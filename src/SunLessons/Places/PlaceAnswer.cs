namespace SunLessons.Places;

/// <summary>What a look-up of a place gives: the place, or the names nearest to what was typed.</summary>
public abstract record PlaceAnswer
{
    private PlaceAnswer()
    {
    }

    /// <summary>The gazetteer holds the place.</summary>
    /// <param name="Place">The place.</param>
    public sealed record Found(Place Place) : PlaceAnswer;

    /// <summary>The gazetteer holds no such place.</summary>
    /// <param name="Typed">What was asked for.</param>
    /// <param name="NearMatches">Places that may have been meant, best first; may be empty.</param>
    public sealed record Unknown(string Typed, IReadOnlyList<Place> NearMatches) : PlaceAnswer
    {
        /// <summary>One sentence: what came, what is allowed, what to write instead.</summary>
        public string Message =>
            $"Place \"{Typed}\" is not in the gazetteer of {Gazetteer.All.Count} towns. "
            + (NearMatches.Count == 0
                ? "Give latitude, longitude and zone instead, such as 42.24 -8.72 Europe/Madrid."
                : $"Did you mean {Listed([.. NearMatches.Select(p => p.Name)])}? Otherwise give latitude, longitude and zone.");

        private static string Listed(IReadOnlyList<string> names) =>
            names.Count == 1 ? names[0] : string.Join(", ", names.Take(names.Count - 1)) + " or " + names[^1];
    }
}
