using System.CommandLine;
using NodaTime;
using SunLessons.App.Data;
using SunLessons.App.Printing;
using SunLessons.CivilTime;
using SunLessons.Magnetism;

namespace SunLessons.App.Verbs;

/// <summary><c>data add|status|remove</c>: later compass models and time-zone rules, from files, without a network.</summary>
public static class DataVerb
{
    /// <summary>Makes the verb.</summary>
    public static Command Create()
    {
        var verb = new Command("data", "Compass models and time-zone rules: add later ones from a file, show those in use, remove added ones. No network is used.");
        var file = new Argument<string>("file") { Description = "The coefficient file of a World Magnetic Model (WMM.COF, from NOAA or BGS), or a time-zone database in NodaTime's format (such as tzdb2026f.nzd)." };
        var add = new Command("add", "Checks a file and adds it for you; pages, lessons and kernels that start afterwards use it.") { file };
        add.SetAction(parsed => Add(parsed.GetValue(file)!));
        var name = new Argument<string>("name") { Description = "The file's name as status shows it." };
        var remove = new Command("remove", "Takes an added file away again.") { name };
        remove.SetAction(parsed => Remove(parsed.GetValue(name)!));
        var status = new Command("status", "Which models and rules are in use, until when, and which files were added.");
        status.SetAction(_ => Status());
        verb.Subcommands.Add(add);
        verb.Subcommands.Add(status);
        verb.Subcommands.Add(remove);
        return verb;
    }

    private static int Add(string path)
    {
        var folder = DataFolder.ForThisUser();
        Touch(() =>
        {
            if (!File.Exists(path))
            {
                throw new BadInputException($"There is no file {path}; give the path of a WMM.COF or of a time-zone database (.nzd).");
            }

            Console.WriteLine($"Added: {folder.Add(File.ReadAllBytes(path))}");
            Console.WriteLine("Pages, lessons and kernels that start from now on use it.");
        });
        return 0;
    }

    private static int Remove(string name)
    {
        var folder = DataFolder.ForThisUser();
        Touch(() =>
        {
            if (!folder.Remove(name))
            {
                var there = folder.Files();
                throw new BadInputException($"No file {name} was added; {(there.Count == 0 ? "none was" : $"there {(there.Count == 1 ? "is" : "are")} {string.Join(", ", there)}")}.");
            }
        });
        Console.WriteLine($"Removed: {name}");
        return 0;
    }

    private static int Status()
    {
        var folder = DataFolder.ForThisUser();
        var lines = new Lines();
        lines.Paragraph("Compass models:");
        foreach (var span in MagneticModels.InUse.Rule)
        {
            var origin = MagneticModels.BuiltIn.Rule.Any(own => own.Model == span.Model) ? "built in" : "added";
            lines.Item(span.Name, origin, $"answers for {Year(span.ValidFromYear)} to {Year(span.ValidToYear)}; source of its give or take: {span.UncertaintySource}");
        }

        lines.Gap();
        var rules = TimeZoneRules.InUse;
        lines.Paragraph("Time-zone rules:");
        lines.Item(rules.Version, rules == TimeZoneRules.BuiltIn ? "built in" : "added", $"laws of clocks as far as they were known in {rules.Version[..4]}; they do not expire, but laws change several times a year");
        lines.Gap();
        lines.Paragraph($"Folder of added files: {folder.Path}");
        foreach (var name in folder.Files())
        {
            lines.Raw($"  {name}");
        }

        lines.Optional(MagneticField.ExpiryNotice(SystemClock.Instance.GetCurrentInstant()));
        Console.Out.WriteLine(lines.ToString());
        return 0;
    }

    private static string Year(double year) => PlainWords.Number(year, "0.0##");

    private static void Touch(Action action)
    {
        try
        {
            action();
        }
        catch (FormatException problem)
        {
            throw new BadInputException(problem.Message);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException($"The file could not be read or kept ({problem.Message.TrimEnd('.')}); check its path and the folder {DataFolder.ForThisUser().Path}.");
        }
    }
}
