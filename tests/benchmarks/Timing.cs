using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

/// <summary>What all benchmarks here share: timing by the clock and by the processor, the machine in a line, and peers run beside.</summary>
internal static class Timing
{
    /// <summary>The machine in two lines; print it first and the load again last.</summary>
    public static void Machine(string what) => Console.WriteLine(
        $"{Load()}\n.NET {Environment.Version}, {RuntimeInformation.OSArchitecture}, {Environment.ProcessorCount} processors; {what}");

    /// <summary>The load average, where the system tells one.</summary>
    public static string Load() => OperatingSystem.IsLinux()
        ? "load average (1, 5, 15 minutes): " + string.Join(' ', File.ReadAllText("/proc/loadavg").Split(' ')[..3])
        : "load average: not known on this system";

    /// <summary>Runs once for warmth and then an odd number of times; seconds by the clock and of processor time, each in rising order.</summary>
    public static (List<double> Clock, List<double> Processor) Runs(int count, Action run)
    {
        run();
        var clock = new List<double>();
        var processor = new List<double>();
        for (var i = 0; i < count; i++)
        {
            var cpu = Process.GetCurrentProcess().TotalProcessorTime;
            var watch = Stopwatch.StartNew();
            run();
            clock.Add(watch.Elapsed.TotalSeconds);
            processor.Add((Process.GetCurrentProcess().TotalProcessorTime - cpu).TotalSeconds);
        }

        clock.Sort();
        processor.Sort();
        return (clock, processor);
    }

    /// <summary>Times five runs of so many things each and prints millions of them a second.</summary>
    public static void Rate(string name, int count, Action run)
    {
        var (clock, processor) = Runs(5, run);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name}: {count / processor[2] / 1e6:0.000} million a second of processor time (median of 5; best {count / processor[0] / 1e6:0.000}), {count / clock[2] / 1e6:0.000} by the clock"));
    }

    /// <summary>Runs a peer's script, which lies beside the caller's own source; one that is not installed is named and left out.</summary>
    public static void Peer(string program, string script, [CallerFilePath] string caller = "")
    {
        var folder = Path.GetDirectoryName(caller)!;
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program)
            {
                ArgumentList = { Path.Combine(folder, script) },
                UseShellExecute = false,
                WorkingDirectory = folder,
            })!;
            process.WaitForExit();
            if (process.ExitCode != 0)
            {
                Console.WriteLine($"{script} ended with {process.ExitCode}; README.md says what it needs.");
            }
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Console.WriteLine($"{program} is not installed here, so {script} was left out.");
        }
    }
}
