using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using SunLessons.Jupyter.Messages;

namespace SunLessons.Kernel.Session;

/// <summary>What was run in this session, in memory; the protocol's tail, range and search look into it. Sessions count from 1.</summary>
internal sealed class History
{
    private const int Session = 1;
    private readonly List<Entry> _entries = [];
    private readonly Lock _gate = new();

    public void Add(int number, string code)
    {
        lock (_gate)
        {
            _entries.Add(new Entry(number, code));
        }
    }

    public void SetOutput(int number, string text)
    {
        lock (_gate)
        {
            if (_entries.LastOrDefault(e => e.Number == number) is { } entry)
            {
                entry.Output = text;
            }
        }
    }

    public JsonObject Answer(JsonObject request)
    {
        Entry[] all;
        lock (_gate)
        {
            all = [.. _entries];
        }

        var n = request.Integer("n", int.MaxValue);
        n = n <= 0 ? int.MaxValue : n;
        IEnumerable<Entry> found = request.Text("hist_access_type") switch
        {
            "range" => Range(all, request),
            "search" => Search(all, request).TakeLast(n),
            _ => all.TakeLast(n),
        };
        var output = request.Flag("output");
        var history = new JsonArray();
        foreach (var entry in found)
        {
            JsonNode text = output ? new JsonArray(entry.Code, entry.Output) : entry.Code;
            history.Add((JsonNode)new JsonArray(Session, entry.Number, text));
        }

        return new JsonObject { ["history"] = history };
    }

    private static IEnumerable<Entry> Range(Entry[] all, JsonObject request)
    {
        // 0 is the present session, and so is its own number; no other is kept.
        if (request.Integer("session") is not (0 or Session))
        {
            return [];
        }

        var start = request.Integer("start", 1);
        var stop = request["stop"] is null ? int.MaxValue : request.Integer("stop", int.MaxValue);
        return all.Where(e => e.Number >= start && e.Number < stop);
    }

    private static IEnumerable<Entry> Search(Entry[] all, JsonObject request)
    {
        var glob = new Regex("^" + Regex.Escape(request.Text("pattern", "*")).Replace("\\*", ".*").Replace("\\?", ".") + "$", RegexOptions.Singleline);
        var found = all.Where(e => glob.IsMatch(e.Code));
        // Unique: the last run of each text counts, in the order of those last runs.
        return request.Flag("unique") ? found.Reverse().DistinctBy(e => e.Code).Reverse() : found;
    }

    private sealed class Entry(int number, string code)
    {
        public int Number { get; } = number;

        public string Code { get; } = code;

        public string? Output { get; set; }
    }
}
