using System.Reflection;
using System.Text.Json.Nodes;
using SunLessons.Cells;
using SunLessons.Cells.Running;
using SunLessons.Figures;
using SunLessons.Jupyter.Messages;
using SunLessons.Jupyter.Server;
using SunLessons.Kernel.Engine;
using SunLessons.Kernel.Verbs;
using SunLessons.Kernel.Widgets;
using SunLessons.Words;

namespace SunLessons.Kernel.Session;

/// <summary>Serves the protocol's requests with a script engine: one object for the life of a kernel.</summary>
internal sealed class KernelSession : IDisposable
{
    private readonly KernelServer _server;
    private readonly IScriptEngine _engine;
    private readonly Action<string> _log;
    private readonly CellConsole _console;
    private readonly History _history = new();
    private readonly Dictionary<int, string> _sources = [];
    private readonly Lock _gate = new();
    private readonly Lazy<Lesson> _lesson;
    private CancellationTokenSource _stop = new();
    private KernelRequest? _running;
    private int _count;

    public KernelSession(KernelServer server, IScriptEngine engine, Action<string> log)
    {
        _server = server;
        _engine = engine;
        _console = new CellConsole(() => server.Current);
        _log = log;
        _console.IsSilent = request => request.Content.Flag("silent");
        var comms = new KernelComms(server);
        Host = new CommWidgetHost(comms, data => Display(data), BeginLesson, Failed, log);
        _lesson = new Lazy<Lesson>(() => Lesson.Begin(Host, NodaTime.SystemClock.Instance));

        Values.Register(typeof(MarkupValue), value => ((MarkupValue)value).Bundle());
        Values.Register(typeof(DisplayHandle), _ => []);
        Values.Register(typeof(Figure), value => ShowFigure((Figure)value));
        Values.Register(typeof(DataTable), value => new JsonObject { ["text/html"] = ((DataTable)value).ToHtml(), ["text/plain"] = ((DataTable)value).ToCsv() });
        Values.Register(typeof(Shown), value =>
        {
            // A control or a live figure as last expression: shown as a widget, which leaves no result to show.
            Lesson.Current.Show(value);
            return [];
        });
        ReadingFormats.Register(Values);

        server.Handle("kernel_info_request", Lane.Immediate, _ => Task.FromResult<JsonObject?>(Info()));
        server.Handle("execute_request", Lane.Ordered, ExecuteAsync);
        server.Handle("complete_request", Lane.Language, CompleteAsync);
        server.Handle("inspect_request", Lane.Language, InspectAsync);
        server.Handle("sunlessons_diagnose_request", Lane.Language, DiagnoseAsync);
        server.Handle("is_complete_request", Lane.Immediate, IsComplete);
        server.Handle("history_request", Lane.Immediate, request => Task.FromResult<JsonObject?>(_history.Answer(request.Content)));
        server.Handle("interrupt_request", Lane.Immediate, Interrupt);
        server.Handle("shutdown_request", Lane.Immediate, Shutdown);
    }

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    /// <summary>The kernel must end: a cell could not be stopped. Raised after the cell was answered.</summary>
    public event Action? GaveUp;

    public CommWidgetHost Host { get; }

    public ValueText Values { get; } = new();

    /// <summary>Whether cells take the process's console; false for a session inside a program that needs its own.</summary>
    public bool TakesConsole { get; init; } = true;

    /// <summary>
    /// Begins the lesson that cells and pages speak to, where it has not begun: one kernel is one learner's session with one lesson. Not
    /// part of construction, because it reads the towns and the time zones, and the sockets need not wait for them.
    /// </summary>
    public void BeginLesson() => _ = _lesson.Value;

    private void TakeConsole()
    {
        if (!TakesConsole)
        {
            return;
        }

        _console.Install();
        Console.SetIn(new CellInput(_console, () => _server.Current, () => _stop.Token));
    }

    public void Dispose()
    {
        _console.Dispose();
    }

    /// <summary>Shows something as an output of the running cell, or of the control that set the calling code off.</summary>
    public void Display(JsonObject data, JsonObject? metadata = null, string? displayId = null, bool update = false)
    {
        if (_server.Current is not { } request || request.Content.Flag("silent"))
        {
            return;
        }

        _console.Flush();
        var transient = new JsonObject();
        if (displayId is not null)
        {
            transient["display_id"] = displayId;
        }

        request.Publish(
            update ? "update_display_data" : "display_data",
            new JsonObject { ["data"] = data, ["metadata"] = metadata ?? [], ["transient"] = transient });
    }

    /// <summary>Takes away what the running cell has shown.</summary>
    public void ClearOutput(bool wait)
    {
        _console.Flush();
        _server.Current?.Publish("clear_output", new JsonObject { ["wait"] = wait });
    }

    private static JsonObject ShowFigure(Figure figure) => new()
    {
        [PlotlyWriter.MimeType] = PlotlyWriter.WriteTree(figure),
        ["text/html"] = FigureHtml.Write(figure),
        ["text/plain"] = figure.Summary,
    };

    private static string Version { get; } =
        typeof(KernelSession).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "0";

    private JsonObject Info() => new()
    {
        ["status"] = "ok",
        ["protocol_version"] = MessageHeaders.ProtocolVersion,
        ["implementation"] = "sunlessons",
        ["implementation_version"] = Version,
        ["language_info"] = new JsonObject
        {
            ["name"] = "C#",
            ["version"] = "14.0",
            ["mimetype"] = "text/x-csharp",
            ["file_extension"] = ".cs",
            ["pygments_lexer"] = "csharp",
            ["codemirror_mode"] = "text/x-csharp",
            ["nbconvert_exporter"] = "script",
        },
        ["banner"] = $"SunLessons {Version}: C# for sundials, the Sun and the compass ({_engine.Name})",
        ["help_links"] = new JsonArray(),
        ["debugger"] = false,
        ["supported_features"] = new JsonArray(),
    };

    private async Task<JsonObject?> ExecuteAsync(KernelRequest request)
    {
        var code = request.Content.Text("code");
        var silent = request.Content.Flag("silent");
        var store = !silent && request.Content.Flag("store_history", true);
        if (store)
        {
            _count++;
        }

        var number = _count;
        lock (_gate)
        {
            _sources[number] = code;
        }

        if (store)
        {
            _history.Add(number, code);
        }

        if (!silent)
        {
            request.Publish("execute_input", new JsonObject { ["code"] = code, ["execution_count"] = number });
        }

        BeginLesson();
        await _engine.WarmUpAsync().ConfigureAwait(false);
        // The engine's preparations have put their own console in place once; from here on it is the cells'.
        TakeConsole();
        _stop = new CancellationTokenSource();
        _running = request;
        try
        {
            return await RunAsync(request, code, number, silent, store).ConfigureAwait(false);
        }
        finally
        {
            _running = null;
            _console.Flush();
        }
    }

    private async Task<JsonObject> RunAsync(KernelRequest request, string code, int number, bool silent, bool store)
    {
        var payload = new JsonArray();
        if (code.TrimStart() is ['?', .. var asked] && asked.Trim().Length > 0)
        {
            payload.Add((JsonNode)Page(asked.Trim()));
            return Done(number, [], payload);
        }

        var language = request.Message.Metadata.Object("sunlessons").Text("language");
        CellResult result;
        string shownCode;
        if (MarkupCell.Read(code, language) is { } markup)
        {
            shownCode = markup.Script();
            result = markup.Expressions.Count == 0
                ? new CellFinished(true, Array.Empty<string>())
                : await _engine.RunAsync(shownCode, 0).ConfigureAwait(false);
            _console.Flush();
            if (result is CellFinished { Value: string[] values })
            {
                Display(new JsonObject(markup.Output(values).Select(pair => KeyValuePair.Create(pair.Key, (JsonNode?)pair.Value))));
                return Done(number, [], payload);
            }

            if (result is CellNotCompiled { Errors: var errors })
            {
                result = new CellNotCompiled([.. errors.Select(e => InMarkup(e, markup.Expressions))]);
                shownCode = "";
            }
        }
        else
        {
            shownCode = code;
            result = await _engine.RunAsync(code, number).ConfigureAwait(false);
        }

        _console.Flush();
        if (result is CellFinished finished)
        {
            if (finished is { HasValue: true, Value: not null } && !silent)
            {
                var data = Values.Bundle(finished.Value);
                if (data.Count > 0 && store)
                {
                    _history.SetOutput(number, data.Text("text/plain"));
                }

                // A call such as display(...) as last expression has shown what there is to show: its handle is no result.
                if (data.Count > 0)
                {
                    request.Publish("execute_result", new JsonObject { ["execution_count"] = number, ["data"] = data, ["metadata"] = new JsonObject() });
                }
            }

            var expressions = await EvaluateAsync(request.Content.Object("user_expressions")).ConfigureAwait(false);
            return Done(number, expressions, payload);
        }

        var failure = Describe(result, shownCode);
        if (request.Content.Flag("stop_on_error", true))
        {
            // Only what waits already: a cell sent after the error was seen is the learner's next try.
            request.AbortWaiting();
        }

        if (!silent)
        {
            request.Publish("error", Error(failure));
        }

        var reply = Error(failure);
        reply["status"] = "error";
        reply["execution_count"] = number;
        reply["user_expressions"] = new JsonObject();
        reply["payload"] = new JsonArray();
        return reply;
    }

    private static JsonObject Done(int number, JsonObject expressions, JsonArray payload) => new()
    {
        ["status"] = "ok",
        ["execution_count"] = number,
        ["user_expressions"] = expressions,
        ["payload"] = payload,
    };

    private static JsonObject Error(Traceback failure) => new()
    {
        ["ename"] = failure.Name,
        ["evalue"] = failure.Message,
        ["traceback"] = new JsonArray([.. failure.Lines.Select(l => (JsonNode)l)]),
    };

    private static CellDiagnostic InMarkup(CellDiagnostic error, IReadOnlyList<string> expressions)
    {
        // Expressions stand one a line behind the script's first line.
        var index = Math.Clamp(error.StartLine - 2, 0, expressions.Count - 1);
        return error with { Message = $"in {{{{ {expressions[index]} }}}}: {error.Message}", StartLine = index + 1, StartColumn = 1, EndLine = index + 1, EndColumn = 1 };
    }

    private Traceback Describe(CellResult result, string code) => result switch
    {
        CellNotCompiled { Errors: var errors } => Traceback.Of(errors, code),
        CellThrew { Exception: var exception } => Traceback.Of(exception, Source),
        CellStopped { Why: var why } => Stopped(why),
        _ => throw new InvalidOperationException("No such end of a cell."),
    };

    // In the language of the lesson.
    private static Traceback Stopped(string why)
    {
        var told = Speech.Translated(why);
        return new Traceback("Stopped", told, [told]);
    }

    /// <summary>What a control's or a button's code threw, in one sentence that names the learner's line.</summary>
    private string Failed(Exception exception)
    {
        if (StopCheck.Reason is { } why)
        {
            return Speech.Translated(why);
        }

        var failure = Traceback.Of(exception, Source);
        var place = failure.Lines.FirstOrDefault(line => line.StartsWith("    at ", StringComparison.Ordinal))?.Trim();
        return $"{failure.Lines[0]}{(place is null ? "" : " " + place)}";
    }

    /// <summary>
    /// Tells an error that nothing caught, of a thread that a cell started: the thread is gone, the kernel goes on. Nothing is told of what
    /// ended because it was asked to.
    /// </summary>
    public void TellUncaught(Exception exception)
    {
        if (StopCheck.Reason is null)
        {
            Console.Error.WriteLine("Something that a cell started ended in an error: " + Failed(exception));
        }
    }

    private string? Source(int number)
    {
        lock (_gate)
        {
            return _sources.GetValueOrDefault(number);
        }
    }

    private async Task<JsonObject> EvaluateAsync(JsonObject asked)
    {
        var answers = new JsonObject();
        foreach (var (name, expression) in asked)
        {
            var code = expression is JsonValue value && value.TryGetValue<string>(out var text) ? text : "";
            var result = await _engine.RunAsync(code, 0).ConfigureAwait(false);
            if (result is CellFinished finished)
            {
                answers[name] = new JsonObject { ["status"] = "ok", ["data"] = Values.Bundle(finished.Value), ["metadata"] = new JsonObject() };
            }
            else
            {
                var error = Error(Describe(result, code));
                error["status"] = "error";
                answers[name] = error;
            }
        }

        return answers;
    }

    private JsonObject Page(string asked)
    {
        var inspection = _engine.Inspect(asked, asked.Length);
        var text = inspection is null
            ? $"Nothing is known about \"{asked}\". Write ? and a name, as ?Math."
            : Text(inspection);
        return new JsonObject { ["source"] = "page", ["data"] = new JsonObject { ["text/plain"] = text }, ["start"] = 0 };
    }

    private static string Text(Inspection inspection) =>
        inspection.Documentation.Length == 0 ? inspection.Declaration : inspection.Declaration + "\n\n" + inspection.Documentation;

    private async Task<JsonObject?> CompleteAsync(KernelRequest request)
    {
        await _engine.WarmUpAsync().ConfigureAwait(false);
        var code = request.Content.Text("code");
        var list = _engine.Complete(code, CodePoints.ToUtf16(code, request.Content.Integer("cursor_pos", int.MaxValue)));
        var start = CodePoints.FromUtf16(code, list.Start);
        var end = CodePoints.FromUtf16(code, list.End);
        var types = new JsonArray();
        foreach (var item in list.Items)
        {
            types.Add((JsonNode)new JsonObject { ["text"] = item.Text, ["type"] = item.Kind, ["start"] = start, ["end"] = end });
        }

        return new JsonObject
        {
            ["matches"] = new JsonArray([.. list.Items.Select(i => (JsonNode)i.Text)]),
            ["cursor_start"] = start,
            ["cursor_end"] = end,
            ["metadata"] = new JsonObject { ["_jupyter_types_experimental"] = types },
        };
    }

    private async Task<JsonObject?> InspectAsync(KernelRequest request)
    {
        await _engine.WarmUpAsync().ConfigureAwait(false);
        var code = request.Content.Text("code");
        var inspection = _engine.Inspect(code, CodePoints.ToUtf16(code, request.Content.Integer("cursor_pos", int.MaxValue)));
        return new JsonObject
        {
            ["found"] = inspection is not null,
            ["data"] = inspection is null ? new JsonObject() : new JsonObject { ["text/plain"] = Text(inspection) },
            ["metadata"] = new JsonObject(),
        };
    }

    private async Task<JsonObject?> DiagnoseAsync(KernelRequest request)
    {
        await _engine.WarmUpAsync().ConfigureAwait(false);
        var remarks = _engine.Diagnose(request.Content.Text("code")).Select(d => (JsonNode)new JsonObject
        {
            ["severity"] = d.Severity,
            ["id"] = d.Id,
            ["message"] = d.Message,
            ["start_line"] = d.StartLine,
            ["start_column"] = d.StartColumn,
            ["end_line"] = d.EndLine,
            ["end_column"] = d.EndColumn,
        });
        return new JsonObject { ["diagnostics"] = new JsonArray([.. remarks]) };
    }

    private Task<JsonObject?> IsComplete(KernelRequest request)
    {
        var (state, indent) = _engine.IsComplete(request.Content.Text("code"));
        return Task.FromResult<JsonObject?>(state switch
        {
            Completeness.Complete => new JsonObject { ["status"] = "complete" },
            Completeness.Incomplete => new JsonObject { ["status"] = "incomplete", ["indent"] = indent },
            _ => new JsonObject { ["status"] = "invalid" },
        });
    }

    private Task<JsonObject?> Interrupt(KernelRequest request)
    {
        Interrupt();
        return Task.FromResult<JsonObject?>([]);
    }

    /// <summary>
    /// Stops the running cell, or what a control or a button set off; when nothing runs, what cells left running. A cell that has not ended
    /// after two seconds waits outside C#: then it is answered in its place, and the kernel gives itself up.
    /// </summary>
    public void Interrupt()
    {
        if ((_running ?? (_server.InTurn is { Message.Type: "comm_msg" } moved ? moved : null)) is not { } request)
        {
            _engine.Stop();
            return;
        }

        _engine.Stop();
        // A thread of its own: the cell may have filled the pool, and a read that is let go runs on inside the call.
        var stop = _stop;
        new Thread(() =>
        {
            stop.Cancel();
            Thread.Sleep(Patience);
            if (ReferenceEquals(_server.InTurn, request))
            {
                GiveUp(request);
            }
        })
        { IsBackground = true, Name = "stop" }.Start();
    }

    private void GiveUp(KernelRequest request)
    {
        _console.Flush();
        var failure = Stopped("The cell waits where it could not be stopped, so the kernel was ended and its variables are gone. Run the cells from the top; leave out what waits.");
        if (!request.Content.Flag("silent"))
        {
            request.Publish("error", Error(failure));
        }

        var reply = Error(failure);
        reply["status"] = "error";
        reply["execution_count"] = _count;
        _server.GiveUp(request, reply);
        GaveUp?.Invoke();
    }

    private Task<JsonObject?> Shutdown(KernelRequest request)
    {
        request.Afterwards = _server.Stop;
        return Task.FromResult<JsonObject?>(new JsonObject { ["restart"] = request.Content.Flag("restart") });
    }
}
