using SunLessons.App.Ahead;
using SunLessons.App.Data;
using SunLessons.App.Verbs;
using SunLessons.Kernel;

// Whatever this process is, it answers from the data that the user added.
foreach (var problem in DataFolder.ForThisUser().TakeIntoUse())
{
    Console.Error.WriteLine(problem);
}

// A kernel must be there in a fraction of a second: its verb is taken before anything of the command line is set up.
if (args is [KernelLaunch.Verb, var connectionFile])
{
    return await KernelProgram.RunAsync(connectionFile);
}

return await CommandLine.RunAsync(args);
