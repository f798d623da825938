using System.Collections.Immutable;
using System.Globalization;

namespace Assistant.Dialogue.Tests.Transcripts;

/// <summary>A conversation as its file in tests/transcripts tells it.</summary>
internal sealed record Transcript(string Site, string Units, ImmutableDictionary<string, string> Record, ImmutableArray<TranscriptTurn> Turns)
{
    private static readonly string[] Expectations =
        ["<", "not:", "asks:", "stop:", "place:", "verdict:", "open:", "caution:", "warns:", "knows:", "lacks:", "once:", "choices:", "closed:"];

    public static Transcript Read(string text)
    {
        var (site, units, record) = ("", "us", ImmutableDictionary.CreateBuilder<string, string>());
        var turns = new List<(int Line, string? Said, string By, TimeSpan After, List<TranscriptExpectation> Expected)> { (1, null, "ada", default, []) };
        var after = TimeSpan.Zero;
        foreach (var (line, number) in text.ReplaceLineEndings("\n").Split('\n').Select((line, index) => (line.Trim(), index + 1)))
        {
            if (line.Length == 0 || line.StartsWith('#'))
            {
                continue;
            }

            if (line.StartsWith('+') && line.EndsWith('m'))
            {
                after = TimeSpan.FromMinutes(int.Parse(line[1..^1], CultureInfo.InvariantCulture));
            }
            else if (line.StartsWith('>'))
            {
                var said = line[1..].Trim();
                var by = said.StartsWith('@') ? said[1..].Split(' ')[0] : "ada";
                turns.Add((number, said.StartsWith('@') ? said[(by.Length + 2)..] : said, by, after, []));
                after = TimeSpan.Zero;
            }
            else if (Array.Find(Expectations, line.StartsWith) is { } kind)
            {
                turns[^1].Expected.Add(new(number, kind.TrimEnd(':'), line[kind.Length..].Trim()));
            }
            else if (Head(line) is var (field, value) && turns.Count == 1)
            {
                (site, units) = (field == "site" ? value : site, field == "units" ? value : units);
                if (field == "record")
                {
                    var parts = value.Split('=', 2, StringSplitOptions.TrimEntries);
                    record[parts[0]] = parts[1];
                }
            }
            else
            {
                throw new FormatException($"line {number}: \"{line}\" is no line of a transcript; see tests/transcripts/README.md");
            }
        }

        return new(site, units, record.ToImmutable(), [.. turns.Select(t => new TranscriptTurn(t.Line, t.Said, t.By, t.After, [.. t.Expected]))]);
    }

    private static (string Field, string Value)? Head(string line) =>
        line.Split(':', 2, StringSplitOptions.TrimEntries) is [("site" or "units" or "record") and var field, var value] ? (field, value) : null;
}

/// <summary>One thing said, or the opening, and what must be true of the answer.</summary>
internal sealed record TranscriptTurn(int Line, string? Said, string By, TimeSpan After, ImmutableArray<TranscriptExpectation> Expected);

internal sealed record TranscriptExpectation(int Line, string Kind, string Text);
