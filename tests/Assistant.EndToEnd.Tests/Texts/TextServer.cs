using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Texts;

/// <summary>The program serving text messages, on a port of its own and with records that outlive it.</summary>
internal sealed partial class TextServer(int port, IReadOnlyDictionary<string, string> environment) : IDisposable
{
    private Process? process;

    public string Data { get; } = Directory.CreateTempSubdirectory("coldwalk-texts-").FullName;

    public async Task StartAsync()
    {
        process = AppProcess.Start(["serve", "--port", port.ToString(CultureInfo.InvariantCulture), "--data", Data], environment);
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        _ = await process.StandardOutput.ReadLineAsync(patience.Token) ?? throw new InvalidOperationException("The program ended before it served.");
    }

    /// <summary>As a power cut does it (SIGKILL).</summary>
    public void Kill()
    {
        process?.Kill();
        process?.WaitForExit();
        process?.Dispose();
        process = null;
    }

    /// <summary>A person of an invented firm, and the code that enrols their phone.</summary>
    public async Task<string> EnrolAsync(string name)
    {
        var added = await AppRun.OfAsync(["people", "add", name, "--firm", "Invented Refrigeration", "--data", Data]);
        Assert.True(added.ExitCode == 0, added.Error);
        var issued = await AppRun.OfAsync(["people", "code", name, "--data", Data]);
        return Code().Match(issued.Output).Value;
    }

    public void Dispose()
    {
        Kill();
        Directory.Delete(Data, recursive: true);
    }

    [GeneratedRegex("^[0-9A-Z]{4}-[0-9A-Z]{4}")]
    private static partial Regex Code();
}
