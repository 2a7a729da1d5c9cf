using System.Runtime.Loader;

namespace SunLessons.Cells.Running;

/// <summary>
/// Runs compiled cells one after another; each finds what those before it set. The compiler of C# scripts gives each cell a class whose factory takes
/// one array of states, in which every cell leaves its own.
/// </summary>
/// <param name="home">Where the assemblies are loaded. They find each other by name, so all cells of a lesson need the same home.</param>
public sealed class CellRun(AssemblyLoadContext home)
{
    // A slot a submission: a learner who runs edited cells all day does not reach the end.
    private readonly object[] _states = new object[10_000];

    /// <summary>The class of the n-th submission, counted from 1.</summary>
    public static string ClassName(int number) => $"Submission{number}";

    /// <summary>Runs a cell and gives its last value; null when it ends with a statement.</summary>
    /// <param name="assembly">The compiled cell.</param>
    /// <param name="number">Which submission it is, from 1.</param>
    /// <exception cref="Exception">Whatever the cell throws.</exception>
    public async Task<object?> RunAsync(byte[] assembly, int number)
    {
        using var image = new MemoryStream(assembly);
        var entry = home.LoadFromStream(image).GetType(ClassName(number))?.GetMethod("<Factory>")
            ?? throw new ArgumentException($"The assembly holds no cell number {number}.", nameof(number));
        return await entry.CreateDelegate<Func<object[], Task<object?>>>()(_states);
    }
}
