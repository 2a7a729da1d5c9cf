using System.CommandLine;
using SunLessons.Publishing.Players;

namespace SunLessons.App.Verbs;

/// <summary><c>player</c>: makes the player of published pages and writes the folder that holds it. Packing the tool calls it; people have <c>publish</c>.</summary>
public static class PlayerVerb
{
    /// <summary>Makes the verb.</summary>
    public static Command Create()
    {
        var verb = new Command("player", "Makes the player of published pages and writes the folder that holds it.") { Hidden = true };
        verb.SetAction(async (_, _) =>
        {
            // Nothing but the folder: packing reads both streams.
            Console.WriteLine(await PlayerFolder.FindAsync(AppContext.BaseDirectory, _ => { }));
            return 0;
        });
        return verb;
    }
}
