using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;

namespace Assistant.Voice.Scoring.Kit;

/// <summary>The written conversations of tests/transcripts, played through the dialogue for what it answers.</summary>
public static class WrittenCalls
{
    private static readonly DateTimeOffset Start = new(2026, 7, 14, 8, 0, 0, TimeSpan.Zero);

    public static IReadOnlyList<string> Files { get; } = [.. Directory.GetFiles(Path.Combine(VoiceParts.Root, "tests/transcripts"), "*.txt").Order(StringComparer.Ordinal)];

    /// <summary>Every reply with the line it answers; the first is that to the opening.</summary>
    public static IEnumerable<(string Said, Reply Reply)> Replies(ITurnEngine engine, string file) => Turns(engine, file).Select(t => (t.Said, t.Reply));

    /// <summary>The same with the visit as it stands after each.</summary>
    public static IEnumerable<(string Said, VisitState State, Reply Reply)> Turns(ITurnEngine engine, string file)
    {
        ArgumentNullException.ThrowIfNull(engine);
        var lines = File.ReadAllLines(file);
        var head = lines.TakeWhile(l => !l.StartsWith('>')).Where(l => l.Contains(':', StringComparison.Ordinal) && !l.StartsWith('#')).Select(l => l.Split(':', 2, StringSplitOptions.TrimEntries)).ToList();
        string? Of(string key) => head.FirstOrDefault(h => h[0] == key)?[1];
        var record = head.Where(h => h[0] == "record").Select(h => h[1].Split('=', 2, StringSplitOptions.TrimEntries)).ToImmutableDictionary(r => r[0], r => r[1]);
        var opening = engine.Open(new VisitOpened(Of("site") ?? "", null, Of("units") ?? "us", record) { At = Start, By = "technician" });
        yield return ("", opening.After, opening.Reply);
        var (state, at, said) = (opening.After, Start, 0);
        foreach (var line in lines)
        {
            if (line.StartsWith('+'))
            {
                at += TimeSpan.FromMinutes(int.Parse(line.Trim('+', 'm', ' '), CultureInfo.InvariantCulture));
            }
            else if (line.StartsWith('>'))
            {
                var text = line[1..].Trim();
                var person = text.StartsWith('@') ? text[1..text.IndexOf(' ', StringComparison.Ordinal)] : "technician";
                text = text.StartsWith('@') ? text[(text.IndexOf(' ', StringComparison.Ordinal) + 1)..] : text;
                at += TimeSpan.FromSeconds(30);
                var turn = engine.Take(state, new($"m{++said}", "voice", "voice", person, at, text));
                state = turn.After;
                yield return (text, turn.After, turn.Reply);
            }
        }
    }
}
