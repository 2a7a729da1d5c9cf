namespace SunLessons.Kernel.Engine;

/// <summary>
/// What the kernel needs from whatever compiles and runs C#. One set of contract tests holds for every engine, so that one can be
/// put in place of another. Runs come one at a time; the other members may be called while a cell runs.
/// </summary>
internal interface IScriptEngine : IAsyncDisposable
{
    /// <summary>Name and version, for the banner.</summary>
    string Name { get; }

    /// <summary>Starts getting ready, or waits until that is done. Safe to call many times.</summary>
    Task WarmUpAsync();

    /// <summary>Compiles and runs a cell. Variables of earlier cells are there; those of this one stay, also when it throws or is stopped.</summary>
    Task<CellResult> RunAsync(string code, int number);

    /// <summary>Asks the running cell to stop; when none runs, what cells left running.</summary>
    void Stop();

    /// <summary>Whether the text is a whole submission.</summary>
    (Completeness State, string Indent) IsComplete(string code);

    /// <summary>What could stand at a place (UTF-16 units from the beginning).</summary>
    CompletionList Complete(string code, int cursor);

    /// <summary>What the word at a place is; null when there is nothing to say.</summary>
    Inspection? Inspect(string code, int cursor);

    /// <summary>What the compiler says about code that is not run.</summary>
    IReadOnlyList<CellDiagnostic> Diagnose(string code);
}

internal enum Completeness
{
    Complete,
    Incomplete,
    Invalid,
}

/// <summary>How a cell ended.</summary>
internal abstract record CellResult;

/// <summary>It ran to its end.</summary>
internal sealed record CellFinished(bool HasValue, object? Value) : CellResult;

/// <summary>It did not compile and nothing of it ran.</summary>
internal sealed record CellNotCompiled(IReadOnlyList<CellDiagnostic> Errors) : CellResult;

/// <summary>It threw.</summary>
internal sealed record CellThrew(Exception Exception) : CellResult;

/// <summary>It was stopped; the sentence says why.</summary>
internal sealed record CellStopped(string Why) : CellResult;

/// <summary>A remark of the compiler. Lines and columns from 1.</summary>
internal sealed record CellDiagnostic(string Severity, string Id, string Message, int StartLine, int StartColumn, int EndLine, int EndColumn)
{
    public bool IsError => Severity == "error";
}

/// <summary>Items that match what stands left of the cursor; the range is in UTF-16 units.</summary>
internal sealed record CompletionList(IReadOnlyList<CompletionEntry> Items, int Start, int End);

internal sealed record CompletionEntry(string Text, string Kind);

/// <summary>What a word is: its declaration and what its documentation says.</summary>
internal sealed record Inspection(string Declaration, string Documentation);
