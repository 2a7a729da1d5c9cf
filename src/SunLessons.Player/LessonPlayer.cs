using System.Buffers;
using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Loader;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using NodaTime;
using SunLessons.Cells;
using SunLessons.Cells.Hosting;
using SunLessons.Cells.Running;
using SunLessons.Places;
using SunLessons.Words;

namespace SunLessons.Player;

/// <summary>What the page's script calls: begin a lesson, run a cell, move a control. Everything is told back by messages.</summary>
public static partial class LessonPlayer
{
    // A drawing is full of signs that the usual writer escapes for HTML; a message is not HTML.
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly PageHost Host = new(message => Tell(message.ToJsonString(Plain)), Draw);
    private static readonly CellRun Cells = new(AssemblyLoadContext.Default);

    /// <summary>Begins the lesson.</summary>
    /// <param name="hello">Where the learner stands and what they did before, as every page says it, and the language of the page.</param>
    [JSExport]
    public static void Begin(string hello)
    {
        Console.SetOut(new CellWriter(Host, Tell));
        var said = JsonNode.Parse(hello)!.AsObject();
        Host.FrontEnd.Open(said);
        Lesson.Begin(Host, SystemClock.Instance);
        Lesson.Current.Language((string)said["language"]!);
    }

    /// <summary>Runs a compiled cell; gives the sentence of what went wrong, or nothing.</summary>
    /// <param name="cell">Which cell it is.</param>
    /// <param name="assembly">The compiled cell.</param>
    /// <param name="number">Which submission it is, from 1.</param>
    /// <param name="markup">The cell's own text when it is HTML or SVG; empty for C#.</param>
    [JSExport]
    public static async Task<string> RunAsync(string cell, byte[] assembly, int number, string markup)
    {
        Host.Cell = cell;
        try
        {
            var value = await Cells.RunAsync(assembly, number);
            if (MarkupCell.Read(markup, "") is { } text && value is string[] values)
            {
                Host.Display(text.Output(values));
            }
            else if (value is not null)
            {
                Lesson.Current.Show(value);
            }

            return "";
        }
        catch (Exception error)
        {
            return $"{error.GetType().Name}: {error.Message}";
        }
    }

    /// <summary>Takes an assembly that was not among those the page began with.</summary>
    [JSExport]
    public static void Load(byte[] assembly)
    {
        using var image = new MemoryStream(assembly);
        AssemblyLoadContext.Default.LoadFromStream(image);
    }

    /// <summary>Reads a place as typed in the lesson's language: <c>{"place":{...}}</c>, or <c>{"problems":["..."]}</c>.</summary>
    [JSExport]
    public static string ReadPlace(string name, string latitude, string longitude, string zone)
    {
        var culture = Speech.Culture;
        var typed = PlaceText.Read(name.Trim().Length > 0 ? name : culture.Words.Translated("My place"), culture.InEnglish(latitude), culture.InEnglish(longitude), zone);
        if (typed.Place is not { } place)
        {
            string?[] problems = [culture.Complaint(typed.LatitudeProblem, latitude), culture.Complaint(typed.LongitudeProblem, longitude), culture.Complaint(typed.ZoneProblem, zone)];
            return new JsonObject { ["problems"] = new JsonArray([.. problems.OfType<string>().Select(p => (JsonNode)p)]) }.ToJsonString();
        }

        return new JsonObject { ["place"] = new PagePlace(place.Name, place.Point, place.ZoneId).ToJson() }.ToJsonString();
    }

    /// <summary>Takes a message of the page: a moved control, a pressed button, another place.</summary>
    [JSExport]
    public static void Receive(string id, string message)
    {
        var content = JsonNode.Parse(message)!.AsObject();
        if (id.Length == 0)
        {
            Host.FrontEnd.Receive(content);
        }
        else
        {
            Host.Receive(id, content);
        }
    }

    // As bytes, which are handed on from here to the page without another copy; a text would be twice as long and copied at every step.
    private static void Draw(JsonObject message, string drawing)
    {
        var bytes = ArrayPool<byte>.Shared.Rent(Encoding.UTF8.GetMaxByteCount(drawing.Length));
        Draw(message.ToJsonString(Plain), bytes.AsSpan(0, Encoding.UTF8.GetBytes(drawing, bytes)));
        ArrayPool<byte>.Shared.Return(bytes);
    }

    [JSImport("tell", "page")]
    private static partial void Tell(string message);

    [JSImport("draw", "page")]
    private static partial void Draw(string message, [JSMarshalAs<JSType.MemoryView>] Span<byte> drawing);
}
