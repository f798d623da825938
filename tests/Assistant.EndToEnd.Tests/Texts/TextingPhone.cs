using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;

namespace Assistant.EndToEnd.Tests.Texts;

/// <summary>A phone at Kannel's fake SMS centre: a program a text that is sent, and one that shows what arrives.</summary>
internal sealed partial class TextingPhone(Kannel gateway, WeakSignal signal, string number) : IDisposable
{
    public const string Coldwalk = "2000";

    private const string Centre = "/usr/lib/kannel/test/fakesmsc";

    /// <summary>The centre tells the time in whole seconds; two texts of one phone are never of the same one.</summary>
    private static readonly TimeSpan Pace = TimeSpan.FromMilliseconds(1050);

    private readonly ConcurrentQueue<string> screen = new();
    private readonly Dictionary<string, string> firstParts = [];
    private DateTimeOffset last;
    private Process? receiver;

    public static bool IsInstalled => File.Exists(Centre);

    /// <summary>The texts that arrived, long ones joined.</summary>
    public IReadOnlyCollection<string> Screen => screen;

    /// <summary>Switched on, or on again after the gateway was away.</summary>
    public void SwitchOn()
    {
        SwitchOff();
        receiver = Start(gateway.PhonePort, "0", $"{number} {Coldwalk} text none");
        receiver.ErrorDataReceived += (_, line) => Show(line.Data);
        receiver.BeginErrorReadLine();
    }

    /// <summary>Without a signal; what arrived before is shown first.</summary>
    public void SwitchOff()
    {
        if (receiver is not null)
        {
            receiver.WaitForExit(TimeSpan.FromSeconds(1));
            receiver.Kill();
            receiver.WaitForExit();
            receiver.Dispose();
            receiver = null;
        }
    }

    public async Task SendAsync(string text)
    {
        var wait = last + Pace - DateTimeOffset.UtcNow;
        await Task.Delay(wait > TimeSpan.Zero ? wait : TimeSpan.Zero);
        last = DateTimeOffset.UtcNow;
        var before = signal.Begun;
        using var sender = Start(gateway.ArrivalPort, "1", $"{number} {Coldwalk} text {text}");
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(10));
        while (await sender.StandardError.ReadLineAsync(patience.Token) is { } line && !line.Contains("sent message 1", StringComparison.Ordinal))
        {
        }

        // What the centre's program has said it sent may still be on its way out of it.
        for (var until = DateTimeOffset.UtcNow + TimeSpan.FromSeconds(20); signal.Begun == before && DateTimeOffset.UtcNow < until;)
        {
            await Task.Delay(20);
        }

        sender.Kill();
        await sender.WaitForExitAsync();
    }

    public async Task WaitForAsync(int texts, TimeSpan patience)
    {
        for (var until = DateTimeOffset.UtcNow + patience; screen.Count < texts; await Task.Delay(100))
        {
            if (DateTimeOffset.UtcNow > until)
            {
                throw new TimeoutException($"{screen.Count} of {texts} replies arrived: {string.Join(" | ", screen)}");
            }
        }
    }

    public void Dispose() => SwitchOff();

    private static Process Start(int port, string most, string message) => Process.Start(
        new ProcessStartInfo(Centre, ["-H", "127.0.0.1", "-r", port.ToString(CultureInfo.InvariantCulture), "-i", "0.1", "-m", most, message]) { RedirectStandardError = true })!;

    private void Show(string? line)
    {
        if (line is null || Shown().Match(line) is not { Success: true } shown)
        {
            return;
        }

        if (shown.Groups["header"] is not { Success: true } header)
        {
            screen.Enqueue(shown.Groups["text"].Value);
            return;
        }

        // The joining header: its number, of how many, which part. A reply has two parts at most.
        var (words, parts) = (WebUtility.UrlDecode(shown.Groups["text"].Value), header.Value.Split('%', StringSplitOptions.RemoveEmptyEntries));
        var (joined, part) = (parts[3], parts[5]);
        if (firstParts.Remove(joined, out var other))
        {
            screen.Enqueue(part == "01" ? words + other : other + words);
        }
        else
        {
            firstParts.Add(joined, words);
        }
    }

    [GeneratedRegex(@"Got message \d+: <\S+ \S+ (text|udh (?<header>\S+) data) (?<text>.*)>$")]
    private static partial Regex Shown();
}
