using Assistant.Trade.Quantities;

namespace Assistant.Records.Conversations;

/// <summary>What a visit is opened with.</summary>
/// <param name="Site">The site's name; null takes it from the asset.</param>
/// <param name="AssetId">The equipment, whose record the visit starts from, or null.</param>
public sealed record VisitRequest(
    string Channel, string Conversation, string? Site, string? AssetId, UnitSystem Units, string Person, DateTimeOffset At);
