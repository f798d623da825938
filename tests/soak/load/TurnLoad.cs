using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Runtime;
using Assistant.App.Hosting;
using Assistant.Channels.Shaping;
using Assistant.Dialogue.Visits;

namespace Assistant.Load;

/// <summary>
/// A whole turn in process - understood, walked, assessed, shaped for the terminal - over every line of the written conversations. The
/// bar: a median under 150 microseconds and 99 of 100 under a millisecond.
/// </summary>
internal static class TurnLoad
{
    private const int WarmPasses = 5;
    private const int Passes = 10;

    /// <summary>The compiler looks ten times a second for what was called often.</summary>
    private static readonly TimeSpan Settling = TimeSpan.FromMilliseconds(300);

    public static int Run()
    {
        var parts = DialogueParts.Load();
        var calls = Directory.GetFiles(Path.Combine(Machine.Root, "tests/transcripts"), "*.txt").Select(Call.Read).ToList();
        Warm(calls, parts);
        var best = new List<double>();
        var all = new List<double>();
        foreach (var call in calls)
        {
            var passes = Enumerable.Range(0, Passes).Select(_ => Play(call, parts)).ToList();
            all.AddRange(passes.SelectMany(p => p));
            // What a turn takes when nobody else took the core: its quickest pass.
            best.AddRange(Enumerable.Range(0, passes[0].Count).Select(i => passes.Min(p => p[i])));
        }

        Console.WriteLine($"{best.Count} turns of {calls.Count} conversations, {Passes} passes; {Machine.Load}");
        Console.WriteLine($"every pass: median {1000 * Figures.At(all, 0.5):0} us, p99 {1000 * Figures.At(all, 0.99):0} us");
        Console.WriteLine($"each turn's quickest pass: median {1000 * Figures.At(best, 0.5):0} us, p99 {1000 * Figures.At(best, 0.99):0} us, longest {1000 * best.Max():0} us");
        return Figures.At(all, 0.5) < 0.150 && Figures.At(all, 0.99) < 1 ? 0 : 1;
    }

    /// <summary>Until the just-in-time compiler has nothing more to do: a program that has served for a while is measured, not one that starts.</summary>
    private static void Warm(List<Call> calls, DialogueParts parts)
    {
        for (var compiled = -1L; compiled != JitInfo.GetCompiledMethodCount(); Thread.Sleep(Settling))
        {
            compiled = JitInfo.GetCompiledMethodCount();
            for (var pass = 0; pass < WarmPasses; pass++)
            {
                calls.ForEach(call => Play(call, parts));
            }
        }
    }

    private static List<double> Play(Call call, DialogueParts parts)
    {
        var state = parts.Engine.Open(call.Opened).After;
        var (times, at) = (new List<double>(), call.Opened.At);
        foreach (var (wait, person, text) in call.Lines)
        {
            at += wait;
            var message = new InboundMessage($"m-{times.Count}", "terminal", "call", person, at, text);
            var began = Stopwatch.GetTimestamp();
            var turn = parts.Engine.Take(state, message);
            _ = ReplyShaping.TerminalText(turn.Reply);
            times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
            state = turn.After;
        }

        return times;
    }

    private sealed record Call(VisitOpened Opened, ImmutableArray<(TimeSpan Wait, string Person, string Text)> Lines)
    {
        public static Call Read(string file)
        {
            var (site, units, known) = ("a site", "us", ImmutableDictionary.CreateBuilder<string, string>());
            var (lines, wait) = (ImmutableArray.CreateBuilder<(TimeSpan, string, string)>(), TimeSpan.Zero);
            foreach (var line in File.ReadLines(file))
            {
                var value = line[(line.IndexOf(' ', StringComparison.Ordinal) + 1)..].Trim();
                if (line.StartsWith("site: ", StringComparison.Ordinal))
                {
                    site = value;
                }
                else if (line.StartsWith("units: ", StringComparison.Ordinal))
                {
                    units = value;
                }
                else if (line.StartsWith("record: ", StringComparison.Ordinal) && value.Split('=', 2, StringSplitOptions.TrimEntries) is [var fact, var kept])
                {
                    known[fact] = kept;
                }
                else if (line.StartsWith('+'))
                {
                    wait += TimeSpan.FromMinutes(int.Parse(string.Concat(line.Where(char.IsAsciiDigit)), CultureInfo.InvariantCulture));
                }
                else if (line.StartsWith("> ", StringComparison.Ordinal))
                {
                    lines.Add(value.StartsWith('@') && value.Split(' ', 2) is [var person, var said] ? (wait, person[1..], said) : (wait, "Kim", value));
                    wait = TimeSpan.FromSeconds(20);
                }
            }

            return new(new(site, null, units, known.ToImmutable()) { At = new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero), By = "Kim" }, lines.ToImmutable());
        }
    }
}
