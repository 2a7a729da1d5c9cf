namespace SunLessons.Jupyter.Client;

/// <summary>The kernel's process ended while something waited for its answer.</summary>
public sealed class KernelDiedException : Exception
{
    /// <summary>With the usual sentence.</summary>
    public KernelDiedException()
        : base("The kernel ended before it answered; its variables are gone. Start it again and run the cells from the top.")
    {
    }
}
