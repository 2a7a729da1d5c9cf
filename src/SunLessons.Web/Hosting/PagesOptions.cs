using SunLessons.Jupyter.Client;

namespace SunLessons.Web.Hosting;

/// <summary>What the pages need to know from the program that starts them.</summary>
public sealed record PagesOptions
{
    /// <summary>Folder with one folder a lesson.</summary>
    public required string LessonsFolder { get; init; }

    /// <summary>Folder of the learner's copies and settings.</summary>
    public required string LearnerFolder { get; init; }

    /// <summary>TCP port on 127.0.0.1; 0 lets the system choose a free one.</summary>
    public int Port { get; init; }

    /// <summary>The command that starts a kernel; asked again at every start, because a faster copy may have become ready.</summary>
    public required Func<KernelCommand> KernelCommand { get; init; }
}
