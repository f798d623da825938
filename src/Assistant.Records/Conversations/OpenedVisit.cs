using Assistant.Dialogue.Replies;

namespace Assistant.Records.Conversations;

/// <summary>A visit that was opened, with the first question.</summary>
public sealed record OpenedVisit(string VisitId, Reply Reply);
