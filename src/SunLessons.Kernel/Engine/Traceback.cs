using System.Diagnostics;

namespace SunLessons.Kernel.Engine;

/// <summary>An exception as the learner needs it: type, message, and the learner's own lines that led to it; nothing of the machinery.</summary>
internal sealed record Traceback(string Name, string Message, IReadOnlyList<string> Lines)
{
    /// <summary>For an exception out of a cell.</summary>
    /// <param name="exception">The exception.</param>
    /// <param name="source">Gives the text of a cell by its number; null when it is not known.</param>
    public static Traceback Of(Exception exception, Func<int, string?> source)
    {
        var plain = Unwrap(exception);
        var lines = new List<string>();
        for (Exception? at = plain; at is not null && lines.Count < 60; at = at.InnerException)
        {
            lines.Add($"{(at == plain ? "" : "caused by ")}{at.GetType().Name}: {at.Message}");
            foreach (var frame in new StackTrace(at, fNeedFileInfo: true).GetFrames())
            {
                if (CellNames.TryRead(frame.GetFileName(), out var number) && number > 0 && lines.Count < 60)
                {
                    lines.Add(Place(number, frame.GetFileLineNumber(), source));
                }
            }
        }

        return new Traceback(plain.GetType().Name, plain.Message, Collapse(lines));
    }

    /// <summary>For a cell that did not compile.</summary>
    public static Traceback Of(IReadOnlyList<CellDiagnostic> errors, string code)
    {
        var text = code.Split('\n');
        var lines = new List<string>();
        foreach (var error in errors)
        {
            lines.Add($"line {error.StartLine}, column {error.StartColumn}: {error.Message} ({error.Id})");
            if (error.StartLine >= 1 && error.StartLine <= text.Length)
            {
                var shown = text[error.StartLine - 1].TrimEnd('\r');
                var width = error.EndLine == error.StartLine ? Math.Max(1, error.EndColumn - error.StartColumn) : 1;
                lines.Add("    " + shown);
                lines.Add("    " + new string(' ', Math.Max(0, error.StartColumn - 1)) + new string('^', width));
            }
        }

        var first = errors[0];
        return new Traceback("CompilationError", $"line {first.StartLine}, column {first.StartColumn}: {first.Message}", lines);
    }

    private static Exception Unwrap(Exception exception) => exception switch
    {
        // What a task or a parallel loop wraps around the one thing that went wrong tells a learner nothing.
        AggregateException { InnerExceptions.Count: 1 } => Unwrap(exception.InnerException!),
        System.Reflection.TargetInvocationException { InnerException: { } inner } => Unwrap(inner),
        _ => exception,
    };

    private static string Place(int number, int line, Func<int, string?> source)
    {
        var text = source(number)?.Split('\n');
        var shown = text is not null && line >= 1 && line <= text.Length ? ": " + text[line - 1].Trim() : "";
        return $"    at {CellNames.For(number)}, line {line}{shown}";
    }

    /// <summary>A method that calls itself gives the same line a thousand times: once is enough, with the number.</summary>
    private static List<string> Collapse(List<string> lines)
    {
        var kept = new List<string>();
        for (var i = 0; i < lines.Count;)
        {
            var same = 1;
            while (i + same < lines.Count && lines[i + same] == lines[i])
            {
                same++;
            }

            kept.Add(same > 1 ? $"{lines[i]}  (several times)" : lines[i]);
            i += same;
        }

        return kept;
    }
}
