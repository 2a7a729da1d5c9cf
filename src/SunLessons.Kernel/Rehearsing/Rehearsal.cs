using System.Text.Json.Nodes;
using NodaTime;
using SunLessons.Cells;
using SunLessons.Cells.Hosting;
using SunLessons.Cells.Running;
using SunLessons.Figures;
using SunLessons.Kernel.Engine;

namespace SunLessons.Kernel.Rehearsing;

/// <summary>
/// A lesson's cells run from the top in this process, with no page and no protocol: what each cell shows can be looked at as objects,
/// and played with as a page would. For those who check a lesson; learners have a kernel of their own.
/// </summary>
public sealed class Rehearsal : IAsyncDisposable
{
    // A cell that does not end by then never will: lessons compute for a second or two.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    // What stops cells is one for the process.
    private static readonly SemaphoreSlim OneAtATime = new(1);
    private readonly IScriptEngine _engine = new RoslynEngine(_ => { });
    private readonly List<RehearsedCell> _cells = [];
    private List<object> _shown = [];

    private Rehearsal(PagePlace place, IClock clock, IFigurePen? pen)
    {
        Host = new InMemoryHost(pen);
        Host.FrontEnd.Open(new JsonObject { ["draws_figures"] = true, ["place"] = place.ToJson() });
        Lesson = new Lesson(Host, clock);
        Lesson.Displayed += thing => _shown.Add(thing);
    }

    /// <summary>The session that the cells speak to.</summary>
    public Lesson Lesson { get; }

    /// <summary>What was shown, as a page would have it.</summary>
    public InMemoryHost Host { get; }

    /// <summary>The cells that ran, in order.</summary>
    public IReadOnlyList<RehearsedCell> Cells => _cells;

    /// <summary>What the cells showed of one kind, in order.</summary>
    public IReadOnlyList<T> All<T>() => [.. _cells.SelectMany(cell => cell.Shown).OfType<T>()];

    /// <summary>Runs cells from the top; one that fails does not keep the next from running.</summary>
    /// <param name="cells">Id, language (<c>csharp</c>, <c>html</c> or <c>svg</c>) and text of each.</param>
    /// <param name="place">Where the learner stands.</param>
    /// <param name="clock">Tells when predictions are recorded.</param>
    /// <param name="pen">What a page that draws live figures would draw them with; without it figures come finished, in HTML.</param>
    public static async Task<Rehearsal> RunAsync(IEnumerable<(string Id, string Language, string Source)> cells, PagePlace place, IClock clock, IFigurePen? pen = null)
    {
        ArgumentNullException.ThrowIfNull(cells);
        ArgumentNullException.ThrowIfNull(place);
        ArgumentNullException.ThrowIfNull(clock);
        var rehearsal = new Rehearsal(place, clock, pen);
        await OneAtATime.WaitAsync().ConfigureAwait(false);
        try
        {
            foreach (var (id, language, source) in cells)
            {
                await rehearsal.RunAsync(id, language, source).ConfigureAwait(false);
            }
        }
        finally
        {
            OneAtATime.Release();
        }

        return rehearsal;
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => _engine.DisposeAsync();

    private async Task RunAsync(string id, string language, string source)
    {
        _shown = [];
        var before = Host.Outputs.Count;
        Lesson.BecomeCurrent();
        var markup = MarkupCell.Read(source, language);
        var code = markup?.Script() ?? source;
        CellResult result;
        using (new Timer(_ => _engine.Stop(), null, Patience, Timeout.InfiniteTimeSpan))
        {
            result = await _engine.RunAsync(code, _cells.Count + 1).ConfigureAwait(false);
        }

        switch (result)
        {
            case CellFinished { Value: string[] values } when markup is not null:
                Host.Display(markup.Output(values));
                break;
            case CellFinished { HasValue: true, Value: { } value }:
                Lesson.Show(value);
                break;
        }

        var problem = result switch
        {
            CellNotCompiled { Errors: var errors } => Traceback.Of(errors, code).Message,
            CellThrew { Exception: var exception } => Traceback.Of(exception, _ => null).Message,
            CellStopped { Why: var why } => why,
            _ => null,
        };
        _cells.Add(new RehearsedCell(id, problem, _shown, [.. Host.Outputs.Skip(before)]));
    }
}
