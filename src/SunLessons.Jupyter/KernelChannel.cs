namespace SunLessons.Jupyter;

/// <summary>The five sockets of a kernel (Jupyter messaging 5.4, "Introduction").</summary>
public enum KernelChannel
{
    /// <summary>Requests to run, complete and inspect, and comm messages.</summary>
    Shell,

    /// <summary>Interrupt and shutdown: served while a cell runs.</summary>
    Control,

    /// <summary>Outputs and status, heard by every client.</summary>
    IoPub,

    /// <summary>The kernel asks its client for a line of input.</summary>
    Stdin,

    /// <summary>Echo, by which a client sees that the process lives.</summary>
    Heartbeat,
}
