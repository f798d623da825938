namespace Assistant.Records.Log;

/// <summary>The visit a conversation is on, when it was opened, and when it was closed.</summary>
internal sealed record CurrentVisit(string VisitId, DateTimeOffset OpenedAt, DateTimeOffset? ClosedAt);
