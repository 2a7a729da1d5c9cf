using System.IO.Compression;
using System.Text;
using System.Xml.Linq;
using NodaTime;
using SunLessons.App.Tests.FrontEnds;
using SunLessons.App.Tests.Support;
using SunLessons.Magnetism;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.App.Tests.Structure;

/// <summary>The science as a package of its own, and the ten lines of its README.</summary>
public sealed class SciencePackageTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("sunlessons-package-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task The_package_holds_readme_licence_and_docs_and_the_ten_lines_of_its_readme_correct_a_reading()
    {
        var feed = Path.Combine(_folder, "feed");
        var packed = await Tool.RunAsync(
            "dotnet", ["pack", RepositoryFiles.Path("src", "SunLessons"), "--no-build", "-c", Support.Program.Configuration, "-o", feed, "-v", "quiet", "--nologo"]);
        Assert.True(packed.ExitCode == 0, packed.Output + packed.Errors);
        var (version, readme) = Contents(Assert.Single(Directory.EnumerateFiles(feed, "*.nupkg")));

        var (code, printed) = Blocks(readme);
        Assert.Equal(10, code.Trim().Split('\n').Length);
        var output = await RunAsync(code, version, feed);
        Assert.Equal(printed.Trim(), output.Trim());

        // And that is what this library itself says.
        var dial = new DialProfile { ScaleLatitude = Latitude.FromDegrees(49), Setting = new DialSetting.NeedleOnLine(new CompassLine(MagneticDeclination.FromDegrees(-15))) };
        var reading = ClockFromDial.Read(Gazetteer.Towns.Single(town => town.Name == "Vigo"), new LocalDate(2026, 6, 21), DialTime.FromHoursMinutes(11, 39.2), dial);
        var chain = Assert.IsType<ClockReading.One>(reading).Chain;
        Assert.Equal(string.Join('\n', chain.Steps.Select(step => step.InWords).Append(chain.Summary)), output.Trim());
    }

    private static (string Version, string Readme) Contents(string package)
    {
        using var zip = ZipFile.OpenRead(package);
        var names = zip.Entries.Select(entry => entry.FullName).ToList();
        foreach (var name in new[]
        {
            "README.md", "LICENSE", "lib/net10.0/SunLessons.dll", "lib/net10.0/SunLessons.xml", "docs/plate-signs.svg", "docs/tables/Sun/README.md", "docs/tables/Magnetism/README.md",
        })
        {
            Assert.Contains(name, names);
        }

        var specification = XDocument.Parse(Text(zip, "SunLessons.Science.nuspec"));
        string Of(string name) => specification.Descendants().First(e => e.Name.LocalName == name).Value;
        Assert.Equal("SunLessons.Science", Of("id"));
        Assert.Equal("README.md", Of("readme"));
        Assert.Equal("MIT", Of("license"));
        Assert.Equal(["MathNet.Numerics", "NodaTime"], specification.Descendants().Where(e => e.Name.LocalName == "dependency").Select(e => e.Attribute("id")!.Value).Order());

        // Docs of the members a reader meets first are in the packed file, not only on the builder's disk.
        Assert.Contains("M:SunLessons.Readings.ClockFromDial.Read(", Text(zip, "lib/net10.0/SunLessons.xml"), StringComparison.Ordinal);
        Assert.Equal(File.ReadAllText(RepositoryFiles.Path("LICENSE")), Text(zip, "LICENSE"));
        return (Of("version"), Text(zip, "README.md").ReplaceLineEndings("\n"));
    }

    private static string Text(ZipArchive zip, string name)
    {
        using var reader = new StreamReader(zip.GetEntry(name)!.Open(), Encoding.UTF8);
        return reader.ReadToEnd();
    }

    /// <summary>The first block of C# and the block after it, which it prints.</summary>
    private static (string Code, string Printed) Blocks(string readme)
    {
        var parts = readme.Split("```");
        var at = Array.FindIndex(parts, part => part.StartsWith("csharp\n", StringComparison.Ordinal));
        return (parts[at]["csharp\n".Length..], parts[at + 2]);
    }

    /// <summary>Runs the lines as a program that has nothing but the package; what the package needs comes from the packages that building this has fetched.</summary>
    private async Task<string> RunAsync(string code, string version, string feed)
    {
        var app = Directory.CreateDirectory(Path.Combine(_folder, "app")).FullName;
        var fetched = Environment.GetEnvironmentVariable("NUGET_PACKAGES")
            ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        await File.WriteAllTextAsync(Path.Combine(app, "Program.cs"), code);
        await File.WriteAllTextAsync(Path.Combine(app, "app.csproj"), $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <OutputType>Exe</OutputType>
                <TargetFramework>net10.0</TargetFramework>
                <ImplicitUsings>enable</ImplicitUsings>
                <Nullable>enable</Nullable>
                <TreatWarningsAsErrors>true</TreatWarningsAsErrors>
                <InvariantGlobalization>true</InvariantGlobalization>
                <NuGetAudit>false</NuGetAudit>
                <RestoreSources>{feed}</RestoreSources>
                <RestorePackagesPath>{Path.Combine(_folder, "packages")}</RestorePackagesPath>
                <RestoreFallbackFolders>{fetched}</RestoreFallbackFolders>
              </PropertyGroup>
              <ItemGroup>
                <PackageReference Include="SunLessons.Science" Version="{version}" />
              </ItemGroup>
            </Project>
            """);
        var built = await Tool.RunAsync("dotnet", ["build", app, "-c", "Release", "-v", "quiet", "--nologo", "-o", Path.Combine(app, "out")]);
        Assert.True(built.ExitCode == 0, built.Output + built.Errors);
        var ran = await Tool.RunAsync("dotnet", ["exec", Path.Combine(app, "out", "app.dll")]);
        Assert.True(ran.ExitCode == 0, ran.Errors);
        return ran.Output.ReplaceLineEndings("\n");
    }
}
