using System.Runtime.Loader;
using System.Text.Json.Nodes;
using NodaTime;
using SunLessons.Cells;
using SunLessons.Cells.Hosting;
using SunLessons.Cells.Predictions;
using SunLessons.Cells.Running;
using SunLessons.Places;

namespace SunLessons.Publishing.Lessons;

/// <summary>A lesson run once from top to bottom where nobody looks: what stands in pages without script, on paper, and in the text.</summary>
internal sealed class LessonRun
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);
    private readonly Dictionary<string, List<StillOutput>> _outputs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<object>> _things = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _values = new(StringComparer.Ordinal);
    private ExecutionContext? _inside;

    private LessonRun(InMemoryHost host) => Host = host;

    /// <summary>Everything that was opened and shown.</summary>
    public InMemoryHost Host { get; }

    /// <summary>The named values as the text quotes them.</summary>
    public IReadOnlyDictionary<string, string> Values => _values;

    /// <summary>Whether a cell showed a prediction, which locks controls.</summary>
    public bool Predicts => _things.Values.Any(things => things.OfType<Prediction>().Any());

    /// <summary>What a cell showed; empty for one that showed nothing.</summary>
    public IReadOnlyList<StillOutput> Outputs(string cell) => _outputs.TryGetValue(cell, out var shown) ? shown : [];

    /// <summary>The objects behind what a cell showed, in their order: controls, figures, questions, sentences.</summary>
    public IReadOnlyList<object> Things(string cell) => _things.TryGetValue(cell, out var things) ? things : [];

    /// <summary>Asks those objects something; they answer for this lesson and its place.</summary>
    public T Ask<T>(Func<T> question)
    {
        T answer = default!;
        ExecutionContext.Run(_inside!, _ => answer = question(), null);
        return answer;
    }

    /// <summary>Runs the cells.</summary>
    /// <param name="name">How problems call the lesson.</param>
    /// <param name="cells">The compiled cells.</param>
    /// <param name="place">Where the learner stands.</param>
    /// <param name="predicted">Whether every prediction is recorded, so that figures show what they would show after it.</param>
    /// <param name="language">The language that the lesson is written in.</param>
    /// <exception cref="PublishProblemException">A cell throws, or does not end within a minute.</exception>
    public static async Task<LessonRun> OfAsync(string name, IReadOnlyList<BuiltCell> cells, Place place, bool predicted, string language)
    {
        var host = new InMemoryHost(new Figures.SvgPen());
        host.FrontEnd.Open(new JsonObject { ["place"] = new PagePlace(place.Name, place.Point, place.ZoneId).ToJson() });
        var run = new LessonRun(host);
        var lesson = new Lesson(host, new StillClock());
        lesson.Language(language);
        lesson.BecomeCurrent();
        run._inside = ExecutionContext.Capture();
        var home = new AssemblyLoadContext(name, isCollectible: true);
        try
        {
            var states = new CellRun(home);
            foreach (var cell in cells)
            {
                await run.RunCellAsync(name, cell, states, lesson);
            }

            if (predicted)
            {
                // Any answer will do: what is shown afterwards is the outcome, not the answer.
                foreach (var guess in run._things.Values.SelectMany(things => things).OfType<Prediction>())
                {
                    guess.RecordExample();
                }
            }

            await lesson.Settled;
        }
        finally
        {
            home.Unload();
        }

        return run;
    }

    private async Task RunCellAsync(string name, BuiltCell cell, CellRun states, Lesson lesson)
    {
        var before = Host.Outputs.Count;
        var things = _things[cell.Cell.Id] = [];
        object? value;
        lesson.Displayed += things.Add;
        try
        {
            value = await Task.Run(() => states.RunAsync(cell.Assembly, cell.Number)).WaitAsync(Patience);
        }
        catch (TimeoutException)
        {
            throw new PublishProblemException($"{name}, cell \"{cell.Cell.Id}\" does not end within {Patience.TotalMinutes:0} minute; a published cell must.");
        }
        catch (Exception error)
        {
            throw new PublishProblemException($"{name}, cell \"{cell.Cell.Id}\": {error.GetType().Name}: {error.Message}", error);
        }

        if (cell.Markup is { } markup)
        {
            var filled = markup.Output((string[])value!);
            Host.Display(filled);
            things.Add(new FilledMarkup((string)filled[markup.MediaType]!));
        }
        else if (value is not null)
        {
            lesson.Show(value);
        }

        lesson.Displayed -= things.Add;
        foreach (var bundle in Host.Outputs.Skip(before))
        {
            if (bundle.TryGetValue(Lesson.ValueMimeType, out var named))
            {
                _values[(string)named["name"]!] = (string)named["text"]!;
                continue;
            }

            var widget = bundle.TryGetValue("application/vnd.jupyter.widget-view+json", out var view) ? (string)view["model_id"]! : null;
            if (!_outputs.TryGetValue(cell.Cell.Id, out var shown))
            {
                _outputs[cell.Cell.Id] = shown = [];
            }

            shown.Add(new StillOutput(bundle, widget is null ? null : Find(Host, widget)));
        }
    }

    internal static InMemoryChannel Find(InMemoryHost host, string id) => host.Channels.First(channel => channel.Id == id.Replace("IPY_MODEL_", "", StringComparison.Ordinal));

    // The same lessons give the same pages: nothing in them may tell when they were published.
    private sealed class StillClock : IClock
    {
        public Instant GetCurrentInstant() => Instant.FromUtc(2026, 1, 1, 12, 0);
    }
}
