using SunLessons.App.Ahead;
using SunLessons.App.Verbs;
using SunLessons.Kernel;

// A kernel must be there in a fraction of a second: its verb is taken before anything of the command line is set up.
if (args is [KernelLaunch.Verb, var connectionFile])
{
    return await KernelProgram.RunAsync(connectionFile);
}

return await CommandLine.RunAsync(args);
