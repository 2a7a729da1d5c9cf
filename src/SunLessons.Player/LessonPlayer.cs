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

namespace SunLessons.Player;

/// <summary>What the page's script calls: begin a lesson, run a cell, move a control. Everything is told back by messages.</summary>
public static partial class LessonPlayer
{
    // A drawing is full of signs that the usual writer escapes for HTML; a message is not HTML.
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly PageHost Host = new(message => Tell(message.ToJsonString(Plain)), Draw);
    private static readonly CellRun Cells = new(AssemblyLoadContext.Default);

    /// <summary>Begins the lesson.</summary>
    /// <param name="hello">Where the learner stands and what they did before, as every page says it.</param>
    [JSExport]
    public static void Begin(string hello)
    {
        Console.SetOut(new CellWriter(Host, Tell));
        Host.FrontEnd.Open(JsonNode.Parse(hello)!.AsObject());
        Lesson.Begin(Host, SystemClock.Instance);
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

    /// <summary>Reads a place as typed: <c>{"place":{...}}</c> with its point in words too, or <c>{"problems":["..."]}</c>.</summary>
    [JSExport]
    public static string ReadPlace(string name, string latitude, string longitude, string zone)
    {
        var typed = PlaceText.Read(name, latitude, longitude, zone);
        if (typed.Place is not { } place)
        {
            return new JsonObject { ["problems"] = new JsonArray([.. typed.Problems.Select(p => (JsonNode)p)]) }.ToJsonString();
        }

        var answer = new PagePlace(place.Name, place.Point, place.ZoneId).ToJson();
        answer["text"] = place.Point.ToString();
        return new JsonObject { ["place"] = answer }.ToJsonString();
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
