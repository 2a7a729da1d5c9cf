using System.Globalization;
using System.Text;
using SunLessons.CivilTime;
using SunLessons.Magnetism;
using SunLessons.Notebooks;

namespace SunLessons.App.Data;

/// <summary>
/// The files that a person added: later compass models and later time-zone rules. Every start of the program, a kernel's too, takes them into use,
/// so that verbs, pages and lessons answer from the same data.
/// </summary>
/// <param name="path">The folder.</param>
public sealed class DataFolder(string path)
{
    private const string ZonesFile = "time-zones.nzd";

    /// <summary>The folder of the user who runs this program: below that of the learner's copies.</summary>
    public static DataFolder ForThisUser() => new(System.IO.Path.Combine(LearnerFolder.ForThisUser(), "data"));

    /// <summary>The folder; it may not be there.</summary>
    public string Path { get; } = path;

    /// <summary>The files in it, in the order in which they are taken into use.</summary>
    public IReadOnlyList<string> Files() => Directory.Exists(Path)
        ? [.. Directory.EnumerateFiles(Path, "compass-*.cof").Concat(Directory.EnumerateFiles(Path, ZonesFile)).Select(System.IO.Path.GetFileName).Order(StringComparer.Ordinal)!]
        : [];

    /// <summary>Takes the files into use. What cannot be used is left out and said: one sentence a file.</summary>
    public IReadOnlyList<string> TakeIntoUse()
    {
        // Asked at every start of a kernel: where nothing was added this is one look at the disk.
        var problems = new List<string>();
        foreach (var name in Files())
        {
            var file = System.IO.Path.Combine(Path, name);
            try
            {
                Taken(SafeFile.ReadAllBytes(file)).Use();
            }
            catch (Exception problem) when (problem is FormatException or IOException or UnauthorizedAccessException)
            {
                problems.Add($"The added data in {file} are not used: {problem.Message}");
            }
        }

        return problems;
    }

    /// <summary>Checks a file and copies it to the folder; an older one of its kind is replaced in one step. It is in use afterwards.</summary>
    /// <returns>What was added, in a sentence.</returns>
    /// <exception cref="FormatException">The file cannot be used; one sentence says why.</exception>
    /// <exception cref="IOException">The folder cannot be made or written.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not.</exception>
    public string Add(byte[] content)
    {
        var taken = Taken(content);
        Directory.CreateDirectory(Path);
        SafeFile.Replace(System.IO.Path.Combine(Path, taken.File), content);
        taken.Use();
        return taken.InWords;
    }

    /// <summary>Takes a file away again; false where it is not there.</summary>
    /// <exception cref="IOException">It cannot be deleted.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not.</exception>
    public bool Remove(string name)
    {
        if (!Files().Contains(name))
        {
            return false;
        }

        File.Delete(System.IO.Path.Combine(Path, name));
        return true;
    }

    // A database of NodaTime's begins with its format's version, the number 0 in four bytes; text never does.
    private static Readable Taken(byte[] content) => content is [0, 0, 0, 0, ..] ? Zones(content) : Compass(content);

    private static Readable Zones(byte[] content)
    {
        var rules = TimeZoneRules.Read(new MemoryStream(content));
        return rules.IsLaterThan(TimeZoneRules.BuiltIn)
            ? new Readable(ZonesFile, $"Time-zone rules {rules.Version}.", () => TimeZoneRules.Use(rules))
            : throw new FormatException($"The time-zone rules {rules.Version} are not later than {TimeZoneRules.BuiltIn.Version}, which this program has; give a later file.");
    }

    private static Readable Compass(byte[] content)
    {
        MagneticModels models;
        try
        {
            models = MagneticModels.InUse.WithWorldModel(Encoding.UTF8.GetString(content));
        }
        catch (FormatException problem) when (content.Contains((byte)0))
        {
            throw new FormatException(
                "The file is neither the coefficient file of a World Magnetic Model (WMM.COF) nor a time-zone database in NodaTime's format (such as tzdb2026f.nzd); give one of these.", problem);
        }

        var last = models.Rule[^1];
        return new Readable(
            string.Create(CultureInfo.InvariantCulture, $"compass-{last.ValidFromYear:0000.0##}.cof"),
            string.Create(CultureInfo.InvariantCulture, $"Compass model {last.Name}, which answers for {last.ValidFromYear:0.0##} to {last.ValidToYear:0.0##}."),
            () => MagneticModels.Use(models));
    }

    private sealed record Readable(string File, string InWords, Action Use);
}
