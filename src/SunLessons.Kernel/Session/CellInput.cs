using SunLessons.Jupyter.Messages;
using SunLessons.Jupyter.Server;

namespace SunLessons.Kernel.Session;

/// <summary>Console.ReadLine in a cell: asks the page that runs the cell, with the line begun on the console as prompt.</summary>
internal sealed class CellInput(CellConsole console, Func<KernelRequest?> current, Func<CancellationToken> stop) : TextReader
{
    private string _rest = "";

    public override string? ReadLine()
    {
        if (_rest.Length > 0)
        {
            var line = _rest.TrimEnd('\n');
            _rest = "";
            return line;
        }

        var request = current();
        if (request is null || !request.Content.Flag("allow_stdin"))
        {
            throw new InvalidOperationException("This cell asks for input, but the page that runs it cannot ask you. Put the value into a variable instead.");
        }

        var prompt = console.UnfinishedLine;
        console.Flush();
        return request.AskAsync(prompt, password: false, stop()).GetAwaiter().GetResult();
    }

    public override int Read()
    {
        if (_rest.Length == 0)
        {
            _rest = ReadLine() + "\n";
        }

        var first = _rest[0];
        _rest = _rest[1..];
        return first;
    }

    public override int Peek() => _rest.Length > 0 ? _rest[0] : -1;

    public override Task<string?> ReadLineAsync() => Task.Run(ReadLine);
}
