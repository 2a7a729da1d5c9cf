using System.Xml.Linq;
using SunLessons.App.Tests.Support;

namespace SunLessons.App.Tests.Structure;

/// <summary>Which way the projects lean on each other, and what may be named where (DEVELOPERS.md, Layout).</summary>
public sealed class ArrowsTests
{
    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["SunLessons"] = [],
        ["SunLessons.Figures"] = ["SunLessons", "SunLessons.Words"],
        ["SunLessons.Plotly"] = ["SunLessons.Figures"],
        ["SunLessons.Cells"] = ["SunLessons.Figures", "SunLessons.Words"],
        ["SunLessons.Notebooks"] = ["SunLessons.Figures"],
        ["SunLessons.Jupyter"] = [],
        ["SunLessons.Kernel"] = ["SunLessons.Jupyter", "SunLessons.Cells", "SunLessons.Plotly"],
        ["SunLessons.Web"] = ["SunLessons.Jupyter", "SunLessons.Notebooks", "SunLessons.Plotly"],
        ["SunLessons.Words"] = [],
        ["SunLessons.Scripts"] = ["SunLessons.Cells"],
        ["SunLessons.Player"] = ["SunLessons.Cells", "SunLessons.Scripts"],
        ["SunLessons.Publishing"] = ["SunLessons.Notebooks", "SunLessons.Scripts", "SunLessons.Words"],
        ["SunLessons.App"] = ["SunLessons.Kernel", "SunLessons.Web", "SunLessons.Publishing"],
    };

    public static TheoryData<string> Projects => [.. Directory.EnumerateDirectories(RepositoryFiles.Path("src")).Select(folder => Path.GetFileName(folder)!)];

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_refers_only_to_the_projects_below_it(string project)
    {
        Assert.True(Allowed.ContainsKey(project), $"src/{project} is new: give it its arrows here and in DEVELOPERS.md.");
        Assert.Equal(Allowed[project].Order(), References(project).Order());
    }

    [Fact]
    public void The_science_depends_on_time_and_numerics_only()
    {
        Assert.Equal(["MathNet.Numerics", "NodaTime"], Packages("SunLessons").Order());
    }

    [Fact]
    public void Only_the_kernel_names_the_engine()
    {
        foreach (var project in Allowed.Keys.Where(name => name is not "SunLessons.Kernel"))
        {
            Assert.DoesNotContain(Packages(project), package => package.StartsWith("Microsoft.DotNet.Interactive", StringComparison.Ordinal));
            var files = Directory.EnumerateFiles(RepositoryFiles.Path("src", project), "*.*", SearchOption.AllDirectories)
                .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
                    && !file.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
                .Where(file => Path.GetExtension(file) is ".cs" or ".razor");
            foreach (var file in files)
            {
                Assert.DoesNotContain("using Microsoft.DotNet.Interactive", File.ReadAllText(file), StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void The_science_asks_no_system_clock()
    {
        foreach (var file in Directory.EnumerateFiles(RepositoryFiles.Path("src", "SunLessons"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)))
        {
            var text = File.ReadAllText(file);
            Assert.False(text.Contains("SystemClock", StringComparison.Ordinal), $"{file} names SystemClock: take an IClock or an Instant.");
            Assert.False(System.Text.RegularExpressions.Regex.IsMatch(text, @"\bDateTime(Offset)?\b"), $"{file} names DateTime: use NodaTime's types.");
        }
    }

    /// <summary>Inside the science a room leans only on rooms before it in this list; the vocabulary at the top is everybody's.</summary>
    [Fact]
    public void The_rooms_of_the_science_lean_one_way()
    {
        string[] rooms = ["CivilTime", "Places", "Magnetism", "Sun", "Uncertainty", "Dials", "Readings", "Logs"];
        for (var room = 0; room < rooms.Length; room++)
        {
            foreach (var file in Directory.EnumerateFiles(RepositoryFiles.Path("src", "SunLessons", rooms[room]), "*.cs", SearchOption.AllDirectories))
            {
                var text = File.ReadAllText(file);
                foreach (var later in rooms[(room + 1)..])
                {
                    Assert.False(
                        text.Contains($"using SunLessons.{later};", StringComparison.Ordinal) || text.Contains($"using SunLessons.{later}.", StringComparison.Ordinal),
                        $"{rooms[room]} leans on {later} in {file}.");
                }
            }
        }
    }

    [Fact]
    public void The_top_level_holds_what_was_agreed_and_nothing_else()
    {
        string[] plain = ["README.md", "DEVELOPERS.md", "SunLessons.sln", "src", "lessons", "tests", "datasets-demo", "LICENSE", "global.json"];
        var others = Directory.EnumerateFileSystemEntries(RepositoryFiles.Root)
            .Select(entry => Path.GetFileName(entry)!)
            .Where(name => !name.StartsWith('.') && !name.StartsWith("Directory.", StringComparison.Ordinal) && !plain.Contains(name));
        Assert.Empty(others);
    }

    private static IEnumerable<string> References(string project) => Elements(project, "ProjectReference")
        .Select(path => Path.GetFileNameWithoutExtension(path.Replace('\\', '/')));

    private static IEnumerable<string> Packages(string project) => Elements(project, "PackageReference");

    private static IEnumerable<string> Elements(string project, string name) =>
        XDocument.Load(RepositoryFiles.Path("src", project, project + ".csproj")).Descendants(name).Select(element => element.Attribute("Include")!.Value);
}
