namespace SunLessons.CivilTime;

/// <summary>What a look-up of a zone gives: the zone, or the ids nearest to what was typed.</summary>
public abstract record ZoneAnswer
{
    private ZoneAnswer()
    {
    }

    /// <summary>The zone is there.</summary>
    /// <param name="Zone">The zone.</param>
    public sealed record Found(CivilZone Zone) : ZoneAnswer;

    /// <summary>The database holds no such zone.</summary>
    /// <param name="Typed">What was asked for.</param>
    /// <param name="NearMatches">Ids that may have been meant, best first; may be empty.</param>
    public sealed record Unknown(string Typed, IReadOnlyList<string> NearMatches) : ZoneAnswer
    {
        /// <summary>The version of the database that was asked, such as <c>2026f</c>.</summary>
        public required string TzdbVersion { get; init; }

        /// <summary>One sentence: what came, what is allowed, what to write instead.</summary>
        public string Message =>
            $"Zone \"{Typed}\" is not in the time-zone database {TzdbVersion}; a zone is an id such as Europe/Madrid or an offset from UTC-18 to UTC+18 such as UTC+5:45. "
            + (NearMatches.Count == 0 ? "Look the id of your zone up by its largest town." : $"Did you mean {Listed(NearMatches)}?");

        private static string Listed(IReadOnlyList<string> ids) =>
            ids.Count == 1 ? ids[0] : string.Join(", ", ids.Take(ids.Count - 1)) + " or " + ids[^1];
    }
}
