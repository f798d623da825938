using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;

namespace Assistant.Channels.Rooms;

/// <summary>A visit in a few lines: where it is, what was read, the verdict, and what is asked now.</summary>
internal sealed class RoomSummary(ITurnEngine engine, PhraseBook book)
{
    /// <summary>A post is read at a glance; the rest is on the page.</summary>
    private const int MostFacts = 12;

    private readonly RoomWording wording = new(book);

    /// <param name="withVerdict">False where the verdict was just said.</param>
    public string Of(VisitState state, bool withVerdict = true)
    {
        var site = state.Unit is { } unit ? $"{state.Site}, {unit}" : state.Site ?? "";
        var lines = new List<string>
        {
            List(state) is { Length: > 0 } list ? Say("rooms.summary", state, ("site", site), ("list", list)) : Say("rooms.summary-empty", state, ("site", site)),
        };
        if (withVerdict)
        {
            lines.Add(state.LastVerdict is { Text.Length: > 0 } verdict ? verdict.Text : Say("verdict.nothing", state));
        }

        var now = engine.Take(state, new("", "", "", "", state.OpenedAt, "repeat")).Reply;
        if (state.Outcome is not null)
        {
            lines.Add(Say("rooms.summary-closed", state));
        }
        else if (now.Ask is { IsEmpty: false } ask)
        {
            lines.Add(Say("rooms.summary-at", state, ("place", book.Word(now.Walk?.Place ?? state.Place ?? "site")), ("stop", ask.Brief)));
        }

        return string.Join('\n', lines);
    }

    /// <summary>By it two summaries are told apart.</summary>
    public static string DigestOf(string summary) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(summary)));

    // What was read last stands last; what the record knew is not read, and of two that differ neither counts yet.
    private string List(VisitState state)
    {
        var read = state.History.Values.Select(h => h[^1]).Where(t => t.Value is not null && !state.Disputes.ContainsKey(t.Value.Fact) && (t.Place != "record" || t.At > state.OpenedAt)).OrderBy(t => t.Number).ToList();
        var list = string.Join(", ", read.TakeLast(MostFacts).Select(t => wording.Fact(t.Value!)));
        return read.Count <= MostFacts ? list : Say("rooms.summary-more", state, ("list", list), ("count", (read.Count - MostFacts).ToString(CultureInfo.InvariantCulture)));
    }

    private string Say(string key, VisitState state, params ReadOnlySpan<Trade.Rules.ReasonPart> parts) => book.Say(key, state.Units, parts).Full;
}
