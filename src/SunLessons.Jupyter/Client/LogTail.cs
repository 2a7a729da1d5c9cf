namespace SunLessons.Jupyter.Client;

/// <summary>The last lines of a log, at most 100.</summary>
internal sealed class LogTail
{
    private readonly Queue<string> _lines = new();
    private readonly Lock _lock = new();

    public string Text
    {
        get
        {
            lock (_lock)
            {
                return string.Join('\n', _lines);
            }
        }
    }

    public void Add(string? line)
    {
        if (line is null)
        {
            return;
        }

        lock (_lock)
        {
            _lines.Enqueue(line);
            while (_lines.Count > 100)
            {
                _lines.Dequeue();
            }
        }
    }
}
