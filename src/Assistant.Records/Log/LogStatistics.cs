namespace Assistant.Records.Log;

/// <summary>How many commits carried how many appends since the start.</summary>
public sealed record LogStatistics(long Commits, long Appends);
