using System.Diagnostics;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;

namespace SunLessons.App.Ahead;

/// <summary>
/// A copy of the program whose kernel is compiled to machine code ahead of time, so that a kernel starts in less than
/// half of the time. It is made behind the first start, at low priority, and used by every kernel started after it
/// is whole; until then kernels start from the program as built. Making it before the first start would leave a person
/// who typed the first command looking at a silent terminal for more than a minute longer.
/// <para>
/// Each build has a folder of its own, named by what went into it; images of assemblies that did not change are taken over
/// from an older folder, so a changed source file costs the changed assemblies only. The tool is packed with the copy for the system that it
/// was packed on, in its folder <c>packed</c>; a program whose kernel itself is compiled ahead needs no copy.
/// </para>
/// </summary>
public sealed class AheadCopy
{
    private const string ReadyMark = "ready";
    private const string KeptMark = "kernelspecs";
    private const string PackedFolder = "packed";
    // What only the other script engine loads, and what the sockets' library refers to and does not use: not compiled, because nothing waits for it.
    private static readonly string[] NotLoaded =
    [
        "Microsoft.DotNet.Interactive", "Microsoft.DotNet.Interactive.CSharp", "Microsoft.CodeAnalysis.Workspaces", "Microsoft.CodeAnalysis.Scripting",
        "Microsoft.CodeAnalysis.CSharp.Scripting", "System.Reactive", "System.ServiceModel.Primitives",
    ];

    // Without these, code of the framework's generic types over the compiler's own types is compiled at each start: 3500 methods, more than
    // half of the time (measured). The runtime checks each such method against the framework that it finds and compiles it anew if it differs.
    private static readonly string[] AcrossAssemblies = ["--opt-cross-module", "*", "--non-local-generics-module", "*"];

    private readonly string _program;
    private readonly string _root;
    private readonly string? _compiler;
    private readonly Dictionary<string, string> _originals;
    private readonly bool _cameWithProgram;

    private AheadCopy(string program, string root, string? compiler)
    {
        _program = program;
        _root = root;
        _compiler = compiler;
        _originals = Originals(program);
        var packed = Path.Combine(program, PackedFolder, SystemName);
        var isPacked = File.Exists(Path.Combine(packed, ReadyMark));
        _cameWithProgram = isPacked || IsCompiledAhead(Path.Combine(program, "SunLessons.Kernel.dll"));
        Folder = isPacked ? packed : _cameWithProgram ? program : Path.Combine(root, BuildName(program));
    }

    /// <summary>The system in the words of .NET's catalogue of runtime identifiers, as "linux-x64": images of one do not run on another.</summary>
    public static string SystemName { get; } = Name();

    /// <summary>The folder of this build's copy, whether or not it is there yet; the program's own where it needs no copy.</summary>
    public string Folder { get; }

    /// <summary>Why the last try to make the copy did not succeed: one sentence. Null before that, and after a success.</summary>
    public string? Problem { get; private set; }

    /// <summary>Whether the copy is whole.</summary>
    public bool IsReady => _cameWithProgram || File.Exists(Path.Combine(Folder, ReadyMark));

    /// <summary>The copy that belongs to the running program.</summary>
    public static AheadCopy OfThisProgram()
    {
        var program = AppContext.BaseDirectory;
        return new AheadCopy(program, Path.Combine(program, "ahead"), FindCompiler(program));
    }

    /// <summary>The copy of a program in some folder.</summary>
    /// <param name="program">The folder of the program as built.</param>
    /// <param name="root">The folder that holds the copies of all its builds.</param>
    /// <param name="compiler">Path of the compiler; null when there is none.</param>
    public static AheadCopy Of(string program, string root, string? compiler) => new(program, root, compiler);

    /// <summary>
    /// Notes that a kernelspec starts this copy. A copy of an older build stays as long as a kernelspec starts it: after a new build
    /// Jupyter goes on with the older kernel instead of finding none.
    /// </summary>
    /// <param name="kernelSpec">Path of the kernel.json.</param>
    /// <exception cref="IOException">The note cannot be written.</exception>
    public void KeepFor(string kernelSpec)
    {
        if (_cameWithProgram)
        {
            return;
        }

        var note = Path.Combine(Folder, KeptMark);
        if (!File.Exists(note) || !File.ReadAllLines(note).Contains(kernelSpec))
        {
            File.AppendAllLines(note, [kernelSpec]);
        }
    }

    /// <summary>
    /// Makes the copy if it is not there; returns whether it is whole afterwards. Nothing is thrown for a folder that may
    /// not be written or a compiler that is missing: kernels then simply start from the program as built.
    /// </summary>
    /// <param name="gently">At low priority, for work behind a running lesson.</param>
    /// <param name="cancellation">Stops between two assemblies; what is finished is kept for the next time.</param>
    public async Task<bool> MakeAsync(bool gently, CancellationToken cancellation = default)
    {
        if (IsReady)
        {
            return true;
        }

        if (_compiler is null)
        {
            Problem = "The compiler, which restore brings for most systems, is not on this machine.";
            return false;
        }

        try
        {
            Problem = null;
            Directory.CreateDirectory(Folder);

            // Two programs started together must not write the same images.
            await using var alone = new FileStream(Path.Combine(_root, "lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            if (IsReady)
            {
                return true;
            }

            var kernelParts = KernelAssemblies();
            foreach (var file in ProgramFiles())
            {
                if (!kernelParts.Contains(file))
                {
                    File.Copy(Path.Combine(_program, file), Path.Combine(Folder, file), overwrite: true);
                }
            }

            foreach (var file in kernelParts)
            {
                cancellation.ThrowIfCancellationRequested();
                await CompileAsync(file, gently, cancellation);
            }

            await File.WriteAllTextAsync(Path.Combine(Folder, ReadyMark), "", cancellation);
            RemoveOlder();
            return true;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or OperationCanceledException or System.ComponentModel.Win32Exception)
        {
            Problem = exception.Message.TrimEnd('.') + ".";
            return false;
        }
    }

    private static bool IsCompiledAhead(string assembly)
    {
        if (!File.Exists(assembly))
        {
            return false;
        }

        using var image = new PEReader(File.OpenRead(assembly));
        return image.PEHeaders.CorHeader is { ManagedNativeHeaderDirectory.Size: > 0 };
    }

    private static string Name()
    {
        // The runtime's own name may be a distribution's; only its C library matters to machine code.
        var own = RuntimeInformation.RuntimeIdentifier;
        var system = OperatingSystem.IsWindows() ? "win" : OperatingSystem.IsMacOS() ? "osx"
            : own.Contains("musl", StringComparison.Ordinal) || own.StartsWith("alpine", StringComparison.Ordinal) ? "linux-musl" : "linux";
        return $"{system}-{RuntimeInformation.ProcessArchitecture.ToString().ToLowerInvariant()}";
    }

    private static string? FindCompiler(string program)
    {
        var note = Path.Combine(program, "ahead-compiler.txt");
        if (!File.Exists(note))
        {
            return null;
        }

        var name = OperatingSystem.IsWindows() ? "crossgen2.exe" : "crossgen2";
        var path = Path.Combine(File.ReadAllText(note).Trim(), name);
        return File.Exists(path) ? path : null;
    }

    /// <summary>Assemblies that the build has already put into the program as images, which cannot be compiled again, by name: where they came from.</summary>
    private static Dictionary<string, string> Originals(string program)
    {
        var note = Path.Combine(program, "ahead-originals.txt");
        return File.Exists(note) ? File.ReadAllLines(note).Where(File.Exists).ToDictionary(path => Path.GetFileName(path)) : [];
    }

    /// <summary>What this build is made of: names, sizes and times of its assemblies, and the framework that images are made for.</summary>
    private static string BuildName(string program)
    {
        var text = new StringBuilder(RuntimeInformation.FrameworkDescription);
        foreach (var file in Directory.EnumerateFiles(program, "*.dll").Order(StringComparer.Ordinal))
        {
            var info = new FileInfo(file);
            text.Append(info.Name).Append(info.Length).Append(info.LastWriteTimeUtc.Ticks);
        }

        return Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..16].ToLowerInvariant();
    }

    private IEnumerable<string> ProgramFiles() => Directory.EnumerateFiles(_program)
        .Select(Path.GetFileName)
        .Where(name => name!.EndsWith(".dll", StringComparison.Ordinal) || name.EndsWith(".xml", StringComparison.Ordinal)
            || name.EndsWith(".deps.json", StringComparison.Ordinal) || name.EndsWith(".runtimeconfig.json", StringComparison.Ordinal))!;

    /// <summary>The kernel's assembly and all that it refers to within the program's folder; the pages' own parts stay as they are.</summary>
    private List<string> KernelAssemblies()
    {
        var found = new List<string>();
        // The program itself and where it keeps its files, of which a kernel needs a few lines; not the pages that they refer to.
        string[] aloneCompiled = ["SunLessons.App", "SunLessons.Notebooks"];
        var open = new Queue<string>([.. aloneCompiled, "SunLessons.Kernel"]);
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        while (open.TryDequeue(out var name))
        {
            var path = Path.Combine(_program, name + ".dll");
            if (!seen.Add(name) || NotLoaded.Contains(name) || !File.Exists(path))
            {
                continue;
            }

            using var stream = File.OpenRead(path);
            using var image = new PEReader(stream);
            if (!image.HasMetadata)
            {
                continue;
            }

            found.Add(name + ".dll");
            if (aloneCompiled.Contains(name))
            {
                continue;
            }

            var metadata = image.GetMetadataReader();
            foreach (var reference in metadata.AssemblyReferences)
            {
                open.Enqueue(metadata.GetString(metadata.GetAssemblyReference(reference).Name));
            }
        }

        return found;
    }

    private async Task CompileAsync(string file, bool gently, CancellationToken cancellation)
    {
        var source = _originals.GetValueOrDefault(file) ?? Path.Combine(_program, file);
        var target = Path.Combine(Folder, file);
        var identity = $"{RuntimeInformation.FrameworkDescription} {string.Join(' ', AcrossAssemblies)} {Convert.ToHexString(SHA256.HashData(await File.ReadAllBytesAsync(source, cancellation)))}";
        if (Identity(Folder, file) == identity)
        {
            return;
        }

        var earlier = Directory.EnumerateDirectories(_root).FirstOrDefault(folder => Identity(folder, file) == identity);
        if (earlier is not null)
        {
            File.Copy(Path.Combine(earlier, file), target, overwrite: true);
        }
        else if (!await RunCompilerAsync(source, target, gently, cancellation))
        {
            // An assembly that cannot be compiled ahead works as it is.
            File.Copy(source, target, overwrite: true);
        }

        // Written last: an image without its identity is made again.
        await File.WriteAllTextAsync(target + ".identity", identity, cancellation);
    }

    private static string? Identity(string folder, string file)
    {
        var path = Path.Combine(folder, file + ".identity");
        return File.Exists(path) && File.Exists(Path.Combine(folder, file)) ? File.ReadAllText(path) : null;
    }

    private async Task<bool> RunCompilerAsync(string source, string target, bool gently, CancellationToken cancellation)
    {
        var framework = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        var shared = Path.GetFullPath(Path.Combine(framework, "..", "..", "Microsoft.AspNetCore.App", Path.GetFileName(framework)));
        var start = new ProcessStartInfo(_compiler!) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        foreach (var argument in (string[])
        [
            source, "-o", target, "-O", "--parallelism", "1",
            .. AcrossAssemblies,
            "--targetos", OperatingSystem.IsWindows() ? "windows" : OperatingSystem.IsMacOS() ? "osx" : "linux",
            "--targetarch", RuntimeInformation.ProcessArchitecture == Architecture.Arm64 ? "arm64" : "x64",
            "-r", Path.Combine(framework, "*.dll"), "-r", Path.Combine(shared, "*.dll"), "-r", Path.Combine(_program, "*.dll"),
        ])
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        if (gently)
        {
            LowerPriority(process);
        }

        try
        {
            var output = process.StandardOutput.ReadToEndAsync(cancellation);
            var errors = process.StandardError.ReadToEndAsync(cancellation);
            await process.WaitForExitAsync(cancellation);
            await Task.WhenAll(output, errors);
            return process.ExitCode == 0 && File.Exists(target);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw;
        }
    }

    private static void LowerPriority(Process process)
    {
        try
        {
            process.PriorityClass = ProcessPriorityClass.BelowNormal;
        }
        catch (Exception exception) when (exception is InvalidOperationException or System.ComponentModel.Win32Exception)
        {
            // It ended already, or the system does not let us: only politeness is lost.
        }
    }

    private void RemoveOlder()
    {
        foreach (var folder in Directory.EnumerateDirectories(_root).Where(folder => folder != Folder && !IsKept(folder)))
        {
            try
            {
                Directory.Delete(folder, recursive: true);
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
            {
                // A kernel of the older build is still running from there; the next build removes it.
            }
        }
    }

    private static bool IsKept(string folder)
    {
        var note = Path.Combine(folder, KeptMark);
        return File.Exists(note) && File.ReadAllLines(note).Any(kernelSpec =>
            KernelSpec.CommandIn(kernelSpec)?.Any(word => Path.GetDirectoryName(word) == folder) == true);
    }
}
