using System.Globalization;
using System.Reflection;

namespace Assistant.Load;

/// <summary>What was measured on, and how busy it was with other things: a figure without that says little.</summary>
internal static class Machine
{
    public static int Cores => Environment.ProcessorCount;

    /// <summary>Processes that wanted a core in the last minute, ours and others'.</summary>
    public static string Load => $"load {File.ReadAllText("/proc/loadavg").Split(' ')[0]}";

    public static string Root { get; } = Metadata("RepositoryRoot");

    /// <summary>The program as it was built beside this one.</summary>
    public static string Program { get; } = Path.Combine(Root, "src/Assistant.App/bin", Metadata("Configuration"), "net10.0/Assistant.App.dll");

    /// <summary>Megabytes a process holds in memory now.</summary>
    public static double ResidentMegabytes(int process) => Kilobytes(process, "VmRSS:") / 1000;

    /// <summary>The most it held.</summary>
    public static double PeakMegabytes(int process) => Kilobytes(process, "VmHWM:") / 1000;

    private static double Kilobytes(int process, string row) => double.Parse(
        File.ReadLines($"/proc/{process}/status").First(l => l.StartsWith(row, StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture);

    private static string Metadata(string key) => typeof(Machine).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().First(a => a.Key == key).Value!;
}
