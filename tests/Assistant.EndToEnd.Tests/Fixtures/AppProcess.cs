using System.Diagnostics;

namespace Assistant.EndToEnd.Tests.Fixtures;

/// <summary>The program run once to its end.</summary>
internal sealed record AppRun(int ExitCode, string Output, string Error)
{
    public static async Task<AppRun> OfAsync(string[] arguments, string input = "", IReadOnlyDictionary<string, string>? environment = null)
    {
        using var process = AppProcess.Start(arguments, environment);
        await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(1));
        try
        {
            await process.WaitForExitAsync(patience.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill();
            throw new TimeoutException($"The program did not end: {string.Join(' ', arguments)}");
        }

        return new(process.ExitCode, await output, await error);
    }
}

/// <summary>Starts the program as a process of its own.</summary>
internal static class AppProcess
{
    public static Process Start(string[] arguments, IReadOnlyDictionary<string, string>? environment = null)
    {
        var start = new ProcessStartInfo("dotnet", [Repository.Program, .. arguments])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in environment ?? new Dictionary<string, string>())
        {
            start.Environment[name] = value;
        }

        return Process.Start(start)!;
    }
}
