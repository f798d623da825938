using System.Globalization;
using System.Text;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Tests.Transcripts;

/// <summary>Plays a transcript on an engine and notes what did not come as written.</summary>
internal sealed class TranscriptPlayer(ITurnEngine engine)
{
    private readonly StringBuilder played = new();
    private readonly List<string> misses = [];

    /// <summary>The conversation as it went.</summary>
    public string Played => played.ToString();

    public IReadOnlyList<string> Misses => misses;

    public void Play(Transcript transcript)
    {
        var now = new DateTimeOffset(2026, 7, 14, 13, 0, 0, TimeSpan.FromHours(2));
        var turn = engine.Open(new(transcript.Site, null, transcript.Units, transcript.Record) { At = now, By = "ada" });
        foreach (var next in transcript.Turns)
        {
            if (next.Said is { } said)
            {
                now += TimeSpan.FromMinutes(1) + next.After;
                turn = engine.Take(turn.After, new(next.Line.ToString(CultureInfo.InvariantCulture), "chat", "c", next.By, now, said));
                played.Append("> ").AppendLine(said);
            }

            played.AppendLine(Whole(turn.Reply)).AppendLine();
            foreach (var expected in next.Expected.Where(e => !Holds(e, turn)))
            {
                misses.Add($"line {expected.Line}: {expected.Kind}: {expected.Text} - but: {Actual(expected, turn)}");
            }
        }
    }

    private static bool Holds(TranscriptExpectation expected, Turn turn) => expected.Kind switch
    {
        "<" => Whole(turn.Reply).Contains(expected.Text, StringComparison.Ordinal),
        "not" => !Whole(turn.Reply).Contains(expected.Text, StringComparison.Ordinal),
        "warns" => turn.Reply.Cautions.Any(c => c.Code == expected.Text),
        "open" => turn.Reply.Verdicts.Any(v => v.Code == expected.Text),
        "lacks" => !turn.After.Facts.Has(FactCatalogue.Find(expected.Text)!),
        "once" => turn.After.History[FactCatalogue.Find(expected.Text)!].Count == 1,
        "caution" or "choices" => Set(Actual(expected, turn)).SetEquals(Set(expected.Text)),
        _ => Actual(expected, turn) == expected.Text,
    };

    private static string Actual(TranscriptExpectation expected, Turn turn) => expected.Kind switch
    {
        "asks" => turn.Reply.AskedFact ?? "-",
        "stop" => turn.Reply.Walk?.Stop ?? "-",
        "place" => turn.Reply.Walk?.Place ?? "-",
        "verdict" => turn.Reply.Verdicts is [{ Standing: "established" or "likely" } first, ..] ? $"{first.Code} {first.Standing}" : "-",
        "open" => string.Join(", ", turn.Reply.Verdicts.Select(v => v.Code)),
        "caution" or "warns" => turn.Reply.Cautions.IsEmpty ? "-" : string.Join(", ", turn.Reply.Cautions.Select(c => c.Code)),
        "knows" => Known(expected.Text.Split('=')[0].Trim(), turn.After),
        "choices" => string.Join(", ", turn.Reply.Choices),
        "closed" => turn.After.Outcome ?? "-",
        _ => Whole(turn.Reply),
    };

    private static string Known(string name, VisitState state) => state.Facts.Find(FactCatalogue.Find(name)!) switch
    {
        Reading reading => string.Create(CultureInfo.InvariantCulture, $"{name} = {reading.Value} {reading.Unit}"),
        Observation seen => $"{name} = {seen.Value}",
        _ => $"{name} is not known",
    };

    private static HashSet<string> Set(string list) => [.. list.Split(',', StringSplitOptions.TrimEntries)];

    private static string Whole(Reply reply)
    {
        var text = new StringBuilder("< ").Append(reply.Say.Full);
        foreach (var reason in reply.Because)
        {
            text.Append("\n<   because ").Append(reason.Full);
        }

        foreach (var caution in reply.Cautions)
        {
            text.Append("\n<   CAUTION ").Append(caution.Code).Append(": ").Append(caution.Text.Full);
        }

        text.Append("\n<   ? ").Append(reply.Ask?.Full ?? "-").Append("   [").Append(reply.Walk?.Stop).Append(' ').Append(reply.Walk?.Place).Append(' ')
            .AppendJoin(' ', reply.Verdicts.Take(3).Select(v => $"{v.Code}:{v.Standing}")).Append(']');
        return text.ToString();
    }
}
