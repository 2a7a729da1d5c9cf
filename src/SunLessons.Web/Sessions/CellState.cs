using SunLessons.Jupyter.Client;
using SunLessons.Notebooks;
using SunLessons.Words;

namespace SunLessons.Web.Sessions;

/// <summary>Where a code cell stands in the running kernel.</summary>
public enum CellPhase
{
    /// <summary>Not run since the kernel started; what it shows comes from the learner's file.</summary>
    NotRun,

    /// <summary>Will run when the cells before it are done.</summary>
    Waiting,

    /// <summary>Running now.</summary>
    Running,

    /// <summary>Ran to its end.</summary>
    Done,

    /// <summary>Ended with an error, or was stopped.</summary>
    Failed,
}

/// <summary>One code cell while its lesson is open: what it showed and where it stands. Changed by its session only; read from any thread.</summary>
public sealed class CellState
{
    /// <summary>Longest text kept of one cell's streams, in characters: more helps nobody and slows the page.</summary>
    internal const int MostText = 100_000;

    private readonly Lock _lock = new();
    private readonly List<NotebookOutput> _outputs;
    private readonly LanguageCulture _culture;
    private int _textLength;
    private bool _clearBeforeNext;

    internal CellState(NotebookCell cell, LanguageCulture culture)
    {
        Id = cell.Id;
        _culture = culture;
        _outputs = [.. cell.Outputs];
    }

    /// <summary>The cell's name in the notebook.</summary>
    public string Id { get; }

    /// <summary>Where it stands.</summary>
    public CellPhase Phase { get; internal set; }

    /// <summary>Whether the text changed since it ran: what it shows no longer belongs to it.</summary>
    public bool NeedsFreshRun { get; internal set; }

    /// <summary>What it showed, in order.</summary>
    public IReadOnlyList<NotebookOutput> Outputs
    {
        get
        {
            lock (_lock)
            {
                return [.. _outputs];
            }
        }
    }

    internal void Clear()
    {
        lock (_lock)
        {
            _outputs.Clear();
            _textLength = 0;
            _clearBeforeNext = false;
        }
    }

    internal void Take(KernelOutput output)
    {
        lock (_lock)
        {
            if (output is ClearedOutput cleared)
            {
                _clearBeforeNext = cleared.Wait;
                if (!cleared.Wait)
                {
                    Clear();
                }

                return;
            }

            if (_clearBeforeNext)
            {
                Clear();
            }

            if (output is StreamOutput stream)
            {
                AddText(stream);
            }
            else if (output.ToNotebook() is { } json)
            {
                _outputs.Add(NotebookOutput.FromJson(json));
            }
        }
    }

    private void AddText(StreamOutput stream)
    {
        if (_textLength >= MostText)
        {
            return;
        }

        var text = stream.Text;
        if (_textLength + text.Length > MostText)
        {
            text = text[..(MostText - _textLength)] + "\n" + _culture.Worded($"(The rest is not shown: a cell may show {MostText} characters of text.)") + "\n";
        }

        _textLength += text.Length;
        if (_outputs.Count > 0 && _outputs[^1] is { Kind: OutputKind.Stream } last && last.StreamName == stream.Name)
        {
            _outputs[^1] = NotebookOutput.Stream(stream.Name, last.StreamText + text);
        }
        else
        {
            _outputs.Add(NotebookOutput.Stream(stream.Name, text));
        }
    }
}
