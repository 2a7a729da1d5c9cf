namespace SunLessons.Notebooks.Tests;

/// <summary>Saves a learner's copy for ever and prints the number of each save once it is complete.</summary>
internal static class KilledWriter
{
    public static void Run(string folder)
    {
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
