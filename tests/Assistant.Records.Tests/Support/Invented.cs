using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;

namespace Assistant.Records.Tests.Support;

/// <summary>Invented people, sites and messages.</summary>
internal static class Invented
{
    public static DateTimeOffset Morning { get; } = new(2026, 1, 12, 8, 30, 0, TimeSpan.FromHours(-7));

    public static VisitOpened Opened(string? assetId = null) =>
        new("Invented Diner", assetId, "us", ImmutableDictionary<string, string>.Empty) { At = Morning, By = "Robin" };

    public static MessageHeard Heard(string text, string by = "Robin", string id = "m-1") => new(id, "chat", text) { At = Morning, By = by };

    public static InboundMessage Message(string id, string text = "38", string conversation = "c-1", string person = "Robin") =>
        new(id, "chat", conversation, person, Morning, text);

    public static Append FirstAppend(string visitId, string conversation = "c-1", string? assetId = null) =>
        new(visitId, 0, [Opened(assetId)]) { Opening = new(Opened(assetId), "chat", conversation, Replaces: null) };
}
