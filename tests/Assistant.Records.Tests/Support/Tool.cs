using System.Diagnostics;

namespace Assistant.Records.Tests.Support;

/// <summary>Programs of the machine that look at what was made.</summary>
internal static class Tool
{
    public static string Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program}: {error.Result}");
        return output;
    }

    /// <summary>The text of a PDF as a reader would select it (poppler).</summary>
    public static string TextOf(byte[] pdf)
    {
        var path = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(path, pdf);
            return Run("pdftotext", "-layout", path, "-");
        }
        finally
        {
            File.Delete(path);
        }
    }
}
