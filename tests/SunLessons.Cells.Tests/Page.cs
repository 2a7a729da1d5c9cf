using System.Text.Json.Nodes;
using NodaTime;
using SunLessons.Cells.Hosting;
using SunLessons.Figures;

namespace SunLessons.Cells.Tests;

/// <summary>A lesson in memory with a page that a test plays.</summary>
internal sealed class Page : IClock
{
    private Instant _now = Instant.FromUtc(2026, 6, 21, 12, 0);

    public Page(bool drawsFigures = false, string? place = null, JsonObject? record = null)
    {
        var hello = new JsonObject { ["draws_figures"] = drawsFigures };
        if (place is not null)
        {
            hello["place"] = JsonNode.Parse(place);
        }

        if (record is not null)
        {
            hello["record"] = record;
        }

        Host.FrontEnd.Open(hello);
        Lesson = new Lesson(Host, this);
    }

    public const string Vigo = """{"name":"Vigo","latitude_degrees":42.24,"longitude_degrees":-8.72,"zone":"Europe/Madrid"}""";
    public const string Darwin = """{"name":"Darwin","latitude_degrees":-12.46,"longitude_degrees":130.84,"zone":"Australia/Darwin"}""";

    public InMemoryHost Host { get; } = new(new PlotlyPen());

    public Lesson Lesson { get; }

    public Instant GetCurrentInstant() => _now;

    public void Wait(Duration duration) => _now += duration;

    /// <summary>The last widget of a model, or the one with a role.</summary>
    public InMemoryChannel Last(string model) => Host.Channels.Last(c => c.Model == model);

    public InMemoryChannel Role(string role) => Host.Channels.Last(c => (string?)c.State["_sunlessons_role"] == role);

    public void Press(string role) => Role(role).Click();

    public string Html(string role) => (string)Role(role).State["value"]!;
}
