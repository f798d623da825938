namespace Assistant.Records.Log;

/// <summary>An event as text: its kind, what is not personal, and what is.</summary>
internal sealed record StoredEvent(string Kind, string Body, string Personal);
