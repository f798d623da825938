using System.Diagnostics;
using Assistant.Load;

namespace Assistant.Faults;

/// <summary>What must hold; the run ends where it does not.</summary>
internal static class Check
{
    public static void That(bool holds, string what)
    {
        if (!holds)
        {
            throw new InvalidOperationException(what);
        }
    }

    /// <summary>Checks the chain of the records with the program's own command, and gives what it says.</summary>
    public static async Task<string> VerifiedAsync(string data)
    {
        using var verify = Process.Start(new ProcessStartInfo("dotnet", [Machine.Program, "verify", "--data", data]) { RedirectStandardOutput = true })!;
        var said = await verify.StandardOutput.ReadToEndAsync();
        await verify.WaitForExitAsync();
        That(verify.ExitCode == 0, said);
        return said.Split('\n')[0];
    }
}
