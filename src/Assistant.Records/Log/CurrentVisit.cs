namespace Assistant.Records.Log;

/// <summary>The visit a conversation is on, when it was opened, and when it was closed.</summary>
/// <param name="Version">The number of its last event just now.</param>
internal sealed record CurrentVisit(string VisitId, int Version, DateTimeOffset OpenedAt, DateTimeOffset? ClosedAt);
