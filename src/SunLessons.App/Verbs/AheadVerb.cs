using System.CommandLine;
using SunLessons.App.Ahead;

namespace SunLessons.App.Verbs;

/// <summary><c>ahead</c>: compiles the kernel ahead and writes the folder that holds it. Packing the tool calls it; people have <c>jupyter add</c>.</summary>
public static class AheadVerb
{
    /// <summary>Makes the verb.</summary>
    public static Command Create()
    {
        var verb = new Command("ahead", "Compiles the kernel ahead and writes the folder that holds it.") { Hidden = true };
        verb.SetAction(async (_, cancellation) =>
        {
            var ahead = AheadCopy.OfThisProgram();
            if (!await ahead.MakeAsync(gently: false, cancellation))
            {
                throw new BadInputException($"The kernel was not compiled ahead: {ahead.Problem}");
            }

            Console.WriteLine(ahead.Folder);
            return 0;
        });
        return verb;
    }
}
