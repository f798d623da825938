using Assistant.App.Commands;

namespace Assistant.App.Hosting;

/// <summary>
/// A setting of the environment, secrets among them: NAME holds it, or NAME_FILE names the file that does (a container's secret, a
/// systemd credential). It is never logged; a message about it names the setting and not what stands in it.
/// </summary>
internal static class Secrets
{
    /// <summary>What the setting holds without the blanks around it; empty where it is not set.</summary>
    /// <exception cref="CommandFailure">Both are set, or the file can not be read.</exception>
    public static string Read(string name)
    {
        var (told, file) = (Named(name), Named(name + "_FILE"));
        if (file.Length == 0)
        {
            return told;
        }

        if (told.Length > 0)
        {
            throw new CommandFailure($"{name} and {name}_FILE are both set. Keep one of them.");
        }

        try
        {
            return File.ReadAllText(file).Trim();
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new CommandFailure($"{name}_FILE: {file} can not be read ({failure.Message.TrimEnd('.')}).");
        }
    }

    private static string Named(string name) => Environment.GetEnvironmentVariable(name)?.Trim() ?? "";
}
