namespace Assistant.Records.Log;

/// <summary>The visit a conversation is on, and when it was closed.</summary>
internal sealed record CurrentVisit(string VisitId, DateTimeOffset? ClosedAt);
