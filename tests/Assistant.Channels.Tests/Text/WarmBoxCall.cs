using System.Globalization;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Channels.Tests.Text;

/// <summary>An invented call to a warm cooler with a dirty condenser, by text message, and what it comes to.</summary>
internal static class WarmBoxCall
{
    /// <summary>In bursts: the texts of one are sent without waiting for an answer, the next is sent when each of them was answered.</summary>
    public static readonly string[][] Bursts =
    [
        ["cold room is warm", "all safe", "r404a cooler box 50 probe 51 set 38 diff 4"],
        ["calling yes evap fans all door good", "prod 46 no ice sol on", "liq line warm txv"],
        ["at the unit", "amb 90 comp running design split 20", "cond fans all cond coil dirty sg clear", "hd 360 suc 62", "ll 126 sl 50"],
        ["skip"],
        ["done"],
        ["cond fans all cond coil clean sg clear", "hd 270 suc 65", "ll 100 sl 48"],
        ["box 39 probe 39", "bulb temp 38"],
        ["done"],
        ["done"],
        ["done"],
    ];

    /// <summary>The same call by one who sends everything seen at a place in one text.</summary>
    public static readonly string[] InOneTextAPlace =
    [
        "r404a cooler box 50 probe 51 set 38 diff 4 calling yes evap fans all door good prod 46 no ice sol on liq line warm txv",
        "amb 90 comp running cond fans all cond coil dirty sg clear design split 20 hd 360 suc 62 ll 126 sl 50",
        "skip",
        "done",
        "box 39 probe 39 bulb temp 38 cond fans all cond coil clean sg clear hd 270 suc 65 ll 100 sl 48",
        "done",
        "done",
        "done",
    ];

    /// <summary>What a visit came to, without its clock: what is known and was read in which order, what was done, where it stands, what the rules make of it.</summary>
    public static string Outcome(VisitState state)
    {
        var lines = new List<string>();
        lines.AddRange(state.Facts.Values.Select(v => $"knows {v.Fact.Name} = {Text(v)}").Order(StringComparer.Ordinal));
        lines.AddRange(state.History.Where(h => !h.Value.IsEmpty)
            .Select(h => $"read {h.Key.Name}: {string.Join(", ", h.Value.Select(e => e.Value is { } value ? Text(value) : "out of date"))}").Order(StringComparer.Ordinal));
        lines.AddRange(state.Questioned.Keys.Select(f => $"questioned {f.Name}").Order(StringComparer.Ordinal));
        lines.Add($"confirmed {string.Join(", ", state.Confirmed.Select(m => m.Stop).Distinct().Order(StringComparer.Ordinal))}");
        lines.Add($"skipped {string.Join(", ", state.Skipped.Select(m => m.Stop).Distinct().Order(StringComparer.Ordinal))}");
        lines.Add($"mended {string.Join(", ", state.Mended.Select(m => m.Fault))}");
        lines.Add(state.Outcome is { } outcome ? $"closed: {outcome}" : $"stands at {state.Walk} {state.Stop} {state.Place} {state.About}, closed: no");
        lines.Add($"open {state.Clarification?.What ?? "nothing"}, to do {state.FollowUps.Count}");
        lines.AddRange(Assessor.Assess(state.Facts).Findings.Select(f => $"{f.Code} {f.Standing}"));
        return string.Join('\n', lines);
    }

    private static string Text(FactValue value) =>
        value is Reading reading ? string.Create(CultureInfo.InvariantCulture, $"{reading.Value} {reading.Unit.Symbol}") : ((Observation)value).Value;
}
