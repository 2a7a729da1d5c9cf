using System.Text.Json.Nodes;
using SunLessons.Jupyter.Client;

namespace SunLessons.Notebooks.Tests;

/// <summary>A lesson run from top to bottom in a kernel process of its own, with a page that draws figures or without one.</summary>
internal sealed class LessonRun : IAsyncDisposable
{
    private const string ValueType = "application/vnd.sunlessons.value+json";
    private readonly KernelProcess _kernel;
    private readonly ClientComm? _page;
    private readonly Lock _lock = new();
    private readonly Dictionary<string, JsonObject> _widgets = [];
    private readonly Dictionary<string, ClientComm> _comms = [];
    private readonly Dictionary<string, string> _values = [];
    private readonly Dictionary<string, JsonNode?> _record = [];

    private LessonRun(KernelProcess kernel, JsonObject? hello)
    {
        _kernel = kernel;
        kernel.Client.CommOpened += TakeWidget;
        if (hello is not null)
        {
            _page = kernel.Client.OpenComm("sunlessons.page", hello);
            _page.Received += TakePageMessage;
        }
    }

    /// <summary>What went wrong, one line a cell; empty when every cell ran.</summary>
    public List<string> Problems { get; } = [];

    /// <summary>The outputs of each cell, by its id.</summary>
    public Dictionary<string, List<KernelOutput>> Outputs { get; } = [];

    /// <summary>The named values as they stand now, by name.</summary>
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

    /// <summary>The state of every widget as it stands now.</summary>
    public IReadOnlyDictionary<string, JsonObject> Widgets
    {
        get
        {
            lock (_lock)
            {
                return _widgets.ToDictionary(pair => pair.Key, pair => (JsonObject)pair.Value.DeepClone());
            }
        }
    }

    /// <summary>What the lesson asked the page to keep.</summary>
    public IReadOnlyDictionary<string, JsonNode?> Record
    {
        get
        {
            lock (_lock)
            {
                return new Dictionary<string, JsonNode?>(_record);
            }
        }
    }

    public static async Task<LessonRun> StartAsync(Notebook lesson, JsonObject? hello)
    {
        KernelProcess kernel = await KernelProcess.StartAsync(
            KernelCommand.DotNet(typeof(LessonRun).Assembly.Location, "kernel-host", KernelCommand.ConnectionFile));
        var run = new LessonRun(kernel, hello);
        foreach (NotebookCell cell in lesson.Cells.Where(cell => cell.Type == CellType.Code))
        {
            await run.RunAsync(cell);
        }

        return run;
    }

    /// <summary>A page's hello with a place.</summary>
    public static JsonObject Hello(string name, double latitude, double longitude, string zone) => new()
    {
        ["draws_figures"] = true,
        ["place"] = Place(name, latitude, longitude, zone),
        ["record"] = new JsonObject(),
    };

    public static JsonObject Place(string name, double latitude, double longitude, string zone) => new()
    {
        ["name"] = name,
        ["latitude_degrees"] = latitude,
        ["longitude_degrees"] = longitude,
        ["zone"] = zone,
    };

    public void MoveTo(JsonObject place) => _page!.Send(new JsonObject { ["place"] = place });

    /// <summary>Sets attributes of a widget as the page would.</summary>
    public void Set(string widget, JsonObject state)
    {
        lock (_lock)
        {
            foreach ((string name, JsonNode? value) in state)
            {
                _widgets[widget][name] = value?.DeepClone();
            }

            _comms[widget].Send(new JsonObject { ["method"] = "update", ["state"] = state.DeepClone(), ["buffer_paths"] = new JsonArray() });
        }
    }

    /// <summary>Presses a button widget as the page would.</summary>
    public void Press(string widget)
    {
        lock (_lock)
        {
            _comms[widget].Send(new JsonObject { ["method"] = "custom", ["content"] = new JsonObject { ["event"] = "click" } });
        }
    }

    /// <summary>Waits until something holds; at most 20 s, so that what never comes is a failure and not a wait without end.</summary>
    public static async Task Until(Func<bool> holds, string what)
    {
        for (int i = 0; i < 800; i++)
        {
            if (holds())
            {
                return;
            }

            await Task.Delay(25);
        }

        Assert.Fail($"It did not come about that {what}.");
    }

    public ValueTask DisposeAsync() => _kernel.DisposeAsync();

    private async Task RunAsync(NotebookCell cell)
    {
        var outputs = new List<KernelOutput>();
        Outputs[cell.Id] = outputs;
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        var metadata = new JsonObject { ["sunlessons"] = new JsonObject { ["language"] = cell.Language, ["cell"] = cell.Id } };
        ExecuteReply reply = await _kernel.Client.ExecuteAsync(cell.Source, metadata, outputs.Add, null, patience.Token);
        if (!reply.Succeeded)
        {
            Problems.Add($"cell {cell.Id}: {reply.ErrorName}: {reply.ErrorValue}");
        }

        foreach (DisplayOutput output in outputs.OfType<DisplayOutput>())
        {
            TakeValue(output.Data[ValueType]);
        }
    }

    private void TakeValue(JsonNode? value)
    {
        if (value?["name"]?.ToString() is string name)
        {
            lock (_lock)
            {
                _values[name] = value["text"]!.ToString();
            }
        }
    }

    private void TakePageMessage(CommMessage message)
    {
        TakeValue(message.Data["value"]);
        if (message.Data["record"] is JsonObject entry && entry["key"]?.ToString() is string key)
        {
            lock (_lock)
            {
                _record[key] = entry["value"]?.DeepClone();
            }
        }
    }

    private void TakeWidget(ClientComm comm, CommMessage message)
    {
        lock (_lock)
        {
            _comms[comm.Id] = comm;
            _widgets[comm.Id] = message.Data["state"] is JsonObject state ? (JsonObject)state.DeepClone() : [];
        }

        comm.Received += change =>
        {
            // A figure that our pages draw travels in messages of its own; its sentence is what a test can read.
            if (change.Data["content"]?["summary"] is JsonNode sentence)
            {
                lock (_lock)
                {
                    _widgets[comm.Id]["_sunlessons_summary"] = sentence.DeepClone();
                }
            }

            if (change.Data["state"] is JsonObject changed)
            {
                lock (_lock)
                {
                    foreach ((string name, JsonNode? value) in changed)
                    {
                        _widgets[comm.Id][name] = value?.DeepClone();
                    }
                }
            }
        };
    }
}
