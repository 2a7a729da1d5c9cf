using System.Text.Json.Nodes;
using SunLessons.Cells.Hosting;
using SunLessons.Figures;
using SunLessons.Jupyter.Server;
using SunLessons.Jupyter.Widgets;

namespace SunLessons.Kernel.Widgets;

/// <summary>The cells' host in the kernel: widgets as standard comms, and our own page by a comm of its own ("sunlessons.page").</summary>
internal sealed class CommWidgetHost : IWidgetHost
{
    /// <summary>Target of the comm that our page opens before anything else.</summary>
    public const string PageTarget = "sunlessons.page";

    private readonly WidgetComms _widgets;
    private readonly Action<JsonObject> _display;
    private readonly Action _begin;
    private readonly Func<Exception, string> _failed;
    private readonly Action<string> _log;
    private readonly ProblemPlaces _problems;
    private readonly List<KernelComm> _pages = [];
    private readonly Lock _gate = new();

    /// <param name="comms">The kernel's comms.</param>
    /// <param name="display">Shows an output of the running cell.</param>
    /// <param name="begin">Begins the lesson where it has not begun: called before a page is heard.</param>
    /// <param name="failed">Makes a sentence of what a control's or a button's code threw.</param>
    /// <param name="log">Takes one line for each thing that a maintainer should know.</param>
    public CommWidgetHost(KernelComms comms, Action<JsonObject> display, Action begin, Func<Exception, string> failed, Action<string> log)
    {
        _widgets = new WidgetComms(comms);
        _problems = new ProblemPlaces(_widgets);
        _display = display;
        _begin = begin;
        _failed = failed;
        _log = log;
        comms.Register(PageTarget, Opened);
    }

    public FrontEnd FrontEnd { get; } = new();

    public IFigurePen Pen { get; } = new PlotlyPen();

    public IWidgetChannel Open(string model, JsonObject state)
    {
        var widget = _widgets.Open(model, state);
        _problems.Opened(widget);
        return new Channel(widget, this);
    }

    public void Display(IWidgetChannel root, string plainText)
    {
        var shown = _problems.Shown(root.Id);
        var data = new JsonObject
        {
            ["application/vnd.jupyter.widget-view+json"] = new JsonObject { ["version_major"] = 2, ["version_minor"] = 1, ["model_id"] = shown },
            ["text/plain"] = plainText,
        };
        if (!FrontEnd.DrawsFigures)
        {
            // Front ends show one of an output's kinds, the richest that they know. This one is for pages made of a notebook, where no widget lives.
            data["text/html"] = StillWidget.Html(shown, _problems.Find);
        }

        _display(data);
    }

    public void Display(IReadOnlyDictionary<string, JsonNode> mimeBundle)
    {
        var data = new JsonObject();
        foreach (var (type, content) in mimeBundle)
        {
            data[type] = content.DeepClone();
        }

        _display(data);
    }

    public void Record(string key, JsonNode? value)
    {
        FrontEnd.Remember(key, value);
        KernelComm[] pages;
        lock (_gate)
        {
            pages = [.. _pages];
        }

        foreach (var page in pages)
        {
            page.Send(new JsonObject { ["record"] = new JsonObject { ["key"] = key, ["value"] = value?.DeepClone() } });
        }
    }

    private void Opened(KernelComm comm, JsonObject hello)
    {
        _begin();
        lock (_gate)
        {
            _pages.Add(comm);
        }

        comm.Received += message => Take(() => FrontEnd.Receive(message));
        comm.Closed += () =>
        {
            lock (_gate)
            {
                _pages.Remove(comm);
            }
        };
        Take(() => FrontEnd.Open(hello));
    }

    private void Take(Action action)
    {
        try
        {
            action();
        }
        catch (ArgumentOutOfRangeException e)
        {
            _log($"The page sent a place that is none: {e.Message}");
        }
    }

    /// <summary>Runs what a change sets off, code of cells among it: that can be stopped as a cell can, and where it fails the learner reads why.</summary>
    private void Run(string widget, Action handlers)
    {
        CellThreads.Enter();
        try
        {
            handlers();
            _problems.Tell(widget, null);
        }
        catch (Exception e)
        {
            _problems.Tell(widget, _failed(e));
        }
    }

    private sealed class Channel : IWidgetChannel
    {
        private readonly Widget _widget;

        public Channel(Widget widget, CommWidgetHost host)
        {
            _widget = widget;
            widget.Changed += changed => host.Run(Id, () => Changed?.Invoke(changed));
            widget.CustomReceived += content => host.Run(Id, () => CustomReceived?.Invoke(content));
        }

        public string Id => _widget.Id;

        public event Action<JsonObject>? Changed;

        public event Action<JsonObject>? CustomReceived;

        public void Update(JsonObject changed) => _widget.Update(changed);

        public void SendCustom(JsonObject content) => _widget.SendCustom(content);
    }
}
