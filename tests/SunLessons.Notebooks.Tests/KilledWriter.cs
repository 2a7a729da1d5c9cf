using System.Runtime.CompilerServices;

namespace SunLessons.Notebooks.Tests;

/// <summary>
/// This test program can also be a process that saves a learner's copy for ever and prints the number of each save once
/// it is complete. The test starts it with the variable below and kills it.
/// </summary>
internal static class KilledWriter
{
    public const string Variable = "SUNLESSONS_TEST_WRITER";

    [ModuleInitializer]
    internal static void RunIfAsked()
    {
        if (Environment.GetEnvironmentVariable(Variable) is not { Length: > 0 } folder)
        {
            return;
        }

        LearnerCopy copy = LearnerCopy.Open(new LessonShelf(Path.Combine(folder, "shelf")).Find("06-noon"), Path.Combine(folder, "own"));
        int number = copy.Record["number"]?.GetValue<int>() ?? 0;

        // Big enough that a write takes many blocks: a half-written file would be seen.
        string filling = new('x', 300_000);
        copy.SetOutputs("sum", [NotebookOutput.Stream("stdout", filling)], 1);
        while (true)
        {
            copy.SetRecord("number", ++number);
            copy.Save();
            Console.WriteLine(number);
            Console.Out.Flush();
        }
    }
}
