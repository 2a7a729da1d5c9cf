using System.Text.Json.Nodes;
using SunLessons.Jupyter.Client;
using SunLessons.Notebooks;
using SunLessons.Web.Widgets;
using SunLessons.Words;

namespace SunLessons.Web.Sessions;

/// <summary>
/// One open lesson: the learner's copy, its kernel once it is started, the controls and what the cells showed.
/// It outlives the page that shows it, so loading the page again loses nothing, and two windows show the same lesson.
/// Opening runs nothing: <see cref="StartAsync"/> is the learner's own decision.
/// </summary>
public sealed class LessonSession : IAsyncDisposable
{
    private const string PageTarget = "sunlessons.page";
    private const string WidgetTarget = "jupyter.widget";
    private const string ValueType = "application/vnd.sunlessons.value+json";

    private readonly LearnerSettings _settings;
    private readonly Func<KernelCommand> _kernelCommand;
    private readonly LearnerCopySaver _saver;
    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly Lock _lock = new();
    private readonly Dictionary<string, CellState> _cells;
    private readonly Dictionary<string, string> _values = [];
    private readonly Dictionary<string, ClientComm> _comms = [];
    private readonly LanguageCulture _culture;
    private KernelProcess? _kernel;
    private ClientComm? _page;

    internal LessonSession(LearnerCopy copy, LearnerSettings settings, Func<KernelCommand> kernelCommand)
    {
        Copy = copy;
        _culture = LanguageCulture.Of(copy.Lesson.Language);
        _settings = settings;
        _kernelCommand = kernelCommand;
        _saver = new LearnerCopySaver(copy);
        _saver.Failed += sentence => Tell(_culture.Words.Translated(sentence));
        _cells = copy.Notebook.Cells.Where(cell => cell.Type == CellType.Code).ToDictionary(cell => cell.Id, cell => new CellState(cell, _culture));
        Notice = copy.Notice is { } notice ? _culture.Words.Translated(notice) : null;
        Widgets.Outgoing += SendToWidget;
        _settings.Changed += TellPlace;
    }

    /// <summary>Raised after anything that a page shows has changed, from any thread.</summary>
    public event Action? Changed;

    /// <summary>The learner's copy.</summary>
    public LearnerCopy Copy { get; }

    /// <summary>The lesson.</summary>
    public Lesson Lesson => Copy.Lesson;

    /// <summary>Where the lesson stands.</summary>
    public LessonPhase Phase { get; private set; }

    /// <summary>One sentence that the learner should read now; nothing when there is none.</summary>
    public string? Notice { get; private set; }

    /// <summary>The controls of the running lesson.</summary>
    public WidgetStore Widgets { get; } = new();

    /// <summary>The state of a code cell.</summary>
    public CellState Cell(string id)
    {
        lock (_lock)
        {
            return _cells[id];
        }
    }

    /// <summary>The named values that cells have given, as their text.</summary>
    public IReadOnlyDictionary<string, string> Values
    {
        get
        {
            lock (_lock)
            {
                return new Dictionary<string, string>(_values);
            }
        }
    }

    /// <summary>Starts a fresh kernel and runs the lesson's cells from the top. A running one is ended first.</summary>
    public async Task StartAsync()
    {
        await _turn.WaitAsync();
        try
        {
            await EndKernelAsync();
            Phase = LessonPhase.Starting;
            Notice = null;
            lock (_lock)
            {
                _values.Clear();
                foreach (var cell in _cells.Values)
                {
                    cell.Phase = CellPhase.Waiting;
                }
            }

            RaiseChanged();
            try
            {
                _kernel = await KernelProcess.StartAsync(_kernelCommand());
            }
            catch (IOException problem)
            {
                Stop(Worded($"The lesson's kernel could not be started: {problem.Message}"));
                return;
            }

            var kernel = _kernel;
            kernel.Client.Died += reason => KernelDied(kernel, reason);
            kernel.Client.CommOpened += CommOpened;
            _page = kernel.Client.OpenComm(PageTarget, new JsonObject
            {
                ["draws_figures"] = true,
                ["place"] = LearnerSettings.ToJson(_settings.Place),
                ["record"] = Copy.Record,
            });
            _page.Received += PageMessage;

            foreach (var cell in Copy.Notebook.Cells.Where(cell => cell.Type == CellType.Code))
            {
                await RunNowAsync(kernel, cell);
                if (Phase == LessonPhase.Stopped)
                {
                    return;
                }
            }

            Phase = LessonPhase.Live;
            RaiseChanged();
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>Runs one cell as it stands; waits for its turn. Without a kernel the lesson is started instead.</summary>
    public async Task RunAsync(string cellId)
    {
        if (_kernel is null || Phase is LessonPhase.Reading or LessonPhase.Stopped)
        {
            await StartAsync();
            return;
        }

        Cell(cellId).Phase = CellPhase.Waiting;
        RaiseChanged();
        await _turn.WaitAsync();
        try
        {
            if (_kernel is { } kernel && Copy.Notebook.Find(cellId) is { } cell)
            {
                await RunNowAsync(kernel, cell);
            }
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>Stops the running cell; its variables and everything before it are kept.</summary>
    public async Task InterruptAsync()
    {
        if (_kernel is { } kernel)
        {
            try
            {
                await kernel.Client.InterruptAsync();
            }
            catch (KernelDiedException)
            {
                // Said by KernelDied already.
            }
        }
    }

    /// <summary>Takes over what the learner wrote in a cell.</summary>
    public void Edit(string cellId, string text)
    {
        if (Copy.Notebook.Find(cellId) is { } cell && cell.Source != text)
        {
            Copy.SetSource(cellId, text);
            var state = Cell(cellId);
            if (state.Phase is CellPhase.Done or CellPhase.Failed && !state.NeedsFreshRun)
            {
                state.NeedsFreshRun = true;
                RaiseChanged();
            }
        }
    }

    /// <summary>Gives a cell the lesson's own text back.</summary>
    public void Restore(string cellId)
    {
        Copy.RestoreSource(cellId);
        Cell(cellId).NeedsFreshRun = Cell(cellId).Phase is CellPhase.Done or CellPhase.Failed;
        RaiseChanged();
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        _settings.Changed -= TellPlace;
        await EndKernelAsync();
        _saver.Dispose();
        _turn.Dispose();
    }

    private async Task RunNowAsync(KernelProcess kernel, NotebookCell cell)
    {
        var state = Cell(cell.Id);
        state.Clear();
        state.Phase = CellPhase.Running;
        state.NeedsFreshRun = false;
        RaiseChanged();
        try
        {
            var metadata = new JsonObject { ["sunlessons"] = new JsonObject { ["language"] = cell.Language, ["cell"] = cell.Id } };
            var reply = await kernel.Client.ExecuteAsync(cell.Source, metadata, output => TakeOutput(state, output));
            state.Phase = reply.Succeeded ? CellPhase.Done : CellPhase.Failed;
            Copy.SetOutputs(cell.Id, state.Outputs, reply.ExecutionCount);
        }
        catch (KernelDiedException)
        {
            state.Phase = CellPhase.Failed;
        }

        RaiseChanged();
    }

    private void TakeOutput(CellState state, KernelOutput output)
    {
        var data = output switch
        {
            DisplayOutput display => display.Data,
            ResultOutput result => result.Data,
            _ => null,
        };
        if (data?[ValueType] is JsonObject value && value["name"]?.ToString() is { } name)
        {
            lock (_lock)
            {
                _values[name] = value["text"]?.ToString() ?? "";
            }
        }

        state.Take(output);
        RaiseChanged();
    }

    private void CommOpened(ClientComm comm, CommMessage message)
    {
        if (comm.Target != WidgetTarget)
        {
            return;
        }

        lock (_lock)
        {
            _comms[comm.Id] = comm;
        }

        comm.Received += change => Widgets.Receive(comm.Id, change.Data);
        comm.Closed += () => Widgets.Close(comm.Id);
        Widgets.Open(comm.Id, message.Data);
    }

    private void PageMessage(CommMessage message)
    {
        if (message.Data["record"] is JsonObject entry && entry["key"]?.ToString() is { } key)
        {
            Copy.SetRecord(key, entry["value"]);
        }

        if (message.Data["value"] is JsonObject value && value["name"]?.ToString() is { } name)
        {
            lock (_lock)
            {
                _values[name] = value["text"]?.ToString() ?? "";
            }

            RaiseChanged();
        }
    }

    private void SendToWidget(string id, JsonObject message)
    {
        ClientComm? comm;
        lock (_lock)
        {
            _comms.TryGetValue(id, out comm);
        }

        comm?.Send(message);
    }

    private void TellPlace()
    {
        _page?.Send(new JsonObject { ["place"] = LearnerSettings.ToJson(_settings.Place) });
        RaiseChanged();
    }

    private void KernelDied(KernelProcess kernel, string reason)
    {
        if (ReferenceEquals(kernel, _kernel))
        {
            Stop(Worded($"{_culture.Words.Translated(reason)} Your answers and your cells are kept. Start the lesson again to go on."));
        }
    }

    private void Stop(string sentence)
    {
        Phase = LessonPhase.Stopped;
        lock (_lock)
        {
            foreach (var cell in _cells.Values.Where(cell => cell.Phase is CellPhase.Waiting or CellPhase.Running))
            {
                cell.Phase = CellPhase.Failed;
            }
        }

        Tell(sentence);
    }

    private void Tell(string sentence)
    {
        Notice = sentence;
        RaiseChanged();
    }

    private async Task EndKernelAsync()
    {
        var kernel = _kernel;
        _kernel = null;
        _page = null;
        lock (_lock)
        {
            _comms.Clear();
        }

        Widgets.Clear();
        if (kernel is not null)
        {
            await kernel.DisposeAsync();
        }
    }

    private string Worded(FormattableString english) => _culture.Worded(english);

    private void RaiseChanged() => Changed?.Invoke();
}
