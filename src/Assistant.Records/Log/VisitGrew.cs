namespace Assistant.Records.Log;

/// <summary>Events were added to a visit's log.</summary>
/// <param name="Version">The number of the last of them.</param>
public sealed record VisitGrew(string VisitId, int Version);
