using System.Text;
using System.Text.Json.Nodes;
using SunLessons.Jupyter.Server;

namespace SunLessons.Kernel.Session;

/// <summary>
/// The console of cells: what is written to standard output and standard error becomes stream messages, in the order in which it
/// was written, belonging to the cell that wrote it, also from tasks and threads that it started. Text is gathered for a few
/// milliseconds, because a message per call would make a loop of prints slow; what is written before a pause is on its way at once after it.
/// </summary>
internal sealed class CellConsole : IDisposable
{
    /// <summary>A cell may write this many characters; the rest is left out, and said so.</summary>
    public const int Limit = 1_000_000;

    private const int GatherMilliseconds = 10;
    private const int GatherCharacters = 16_384;

    private readonly Lock _gate = new();
    private readonly StringBuilder _text = new();
    private readonly Func<KernelRequest?> _current;
    private readonly AutoResetEvent _begun = new(false);
    private readonly TextWriter _out;
    private readonly TextWriter _error;
    private KernelRequest? _owner;
    private string _name = "stdout";
    private string _unfinished = "";
    private bool _timing;
    private volatile bool _disposed;
    private KernelRequest? _counted;
    private int _written;

    /// <param name="current">The request that the calling code works for.</param>
    public CellConsole(Func<KernelRequest?> current)
    {
        _current = current;
        // A thread of its own, not a timer: a cell may fill the pool, and its output must come all the same.
        new Thread(SendGathered) { IsBackground = true, Name = "cell output" }.Start();
        _out = TextWriter.Synchronized(new Writer(this, "stdout"));
        _error = TextWriter.Synchronized(new Writer(this, "stderr"));
    }

    /// <summary>The line that was written to standard output and not ended yet: the prompt of a read.</summary>
    public string UnfinishedLine
    {
        get
        {
            lock (_gate)
            {
                return _unfinished;
            }
        }
    }

    /// <summary>Requests whose output is not shown (silent runs).</summary>
    public Func<KernelRequest, bool> IsSilent { get; set; } = _ => false;

    /// <summary>Puts the writers in place of the process's own.</summary>
    public void Install()
    {
        Console.SetOut(_out);
        Console.SetError(_error);
    }

    /// <summary>Sends what is gathered. Called before anything else of a cell is shown, so that the order holds.</summary>
    public void Flush()
    {
        lock (_gate)
        {
            _timing = false;
            Send();
        }
    }

    public void Dispose()
    {
        _disposed = true;
        _begun.Set();
    }

    private void SendGathered()
    {
        while (_begun.WaitOne() && !_disposed)
        {
            Thread.Sleep(GatherMilliseconds);
            Flush();
        }
    }

    private void Write(string name, ReadOnlySpan<char> text)
    {
        if (text.IsEmpty || _current() is not { } owner)
        {
            return;
        }

        lock (_gate)
        {
            if (!ReferenceEquals(owner, _owner) || name != _name || _text.Length > GatherCharacters)
            {
                Send();
            }

            _owner = owner;
            _name = name;
            if (!ReferenceEquals(owner, _counted))
            {
                _counted = owner;
                _written = 0;
                _unfinished = "";
            }

            if (_written >= Limit)
            {
                return;
            }

            var room = Limit - _written;
            _text.Append(text.Length > room ? text[..room] : text);
            _written += text.Length;
            Remember(name, text);
            if (_written >= Limit)
            {
                Send();
                _name = "stderr";
                _text.Append($"\nThis cell wrote more than {Limit:N0} characters; the rest is left out. Print fewer lines, or a summary.\n");
                Send();
                return;
            }

            if (!_timing)
            {
                _timing = true;
                _begun.Set();
            }
        }
    }

    private void Remember(string name, ReadOnlySpan<char> text)
    {
        if (name != "stdout")
        {
            return;
        }

        var end = text.LastIndexOf('\n');
        var rest = end < 0 ? text : text[(end + 1)..];
        _unfinished = end < 0 && _unfinished.Length < 1000 ? _unfinished + rest.ToString() : rest.ToString();
    }

    private void Send()
    {
        if (_text.Length == 0 || _owner is null)
        {
            return;
        }

        var text = _text.ToString();
        _text.Clear();
        if (!IsSilent(_owner))
        {
            _owner.Publish("stream", new JsonObject { ["name"] = _name, ["text"] = text });
        }
    }

    private sealed class Writer(CellConsole console, string name) : TextWriter(System.Globalization.CultureInfo.InvariantCulture)
    {
        public override Encoding Encoding => Encoding.UTF8;

        // One kind of line end in a notebook, whatever the system.
        [System.Diagnostics.CodeAnalysis.AllowNull]
        public override string NewLine { get; set; } = "\n";

        public override void Write(char value) => console.Write(name, [value]);

        public override void Write(char[] buffer, int index, int count) => console.Write(name, buffer.AsSpan(index, count));

        public override void Write(ReadOnlySpan<char> buffer) => console.Write(name, buffer);

        public override void Write(string? value) => console.Write(name, value);

        public override void WriteLine(string? value) => console.Write(name, value + "\n");

        public override void Flush() => console.Flush();
    }
}
