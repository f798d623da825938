using System.ComponentModel;
using System.Diagnostics;

namespace Assistant.Voice.Devices;

/// <summary>What recorder and player have in common.</summary>
internal static class Sounding
{
    public static string[] Device(string? device) => device is null ? [] : ["-D", device];

    public static string FirstLine(string text) => text.Split('\n', StringSplitOptions.RemoveEmptyEntries).FirstOrDefault()?.Trim() ?? "no reason given";

    public static Process Start(string program, IEnumerable<string> arguments, string what)
    {
        try
        {
            return Process.Start(new ProcessStartInfo(program, arguments)
            {
                RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false,
            }) ?? throw new VoicePartMissingException($"{what} is off: {program} does not start");
        }
        catch (Win32Exception)
        {
            throw new VoicePartMissingException($"{what} is off: {program} is missing; install it with: apt-get install alsa-utils");
        }
    }
}
