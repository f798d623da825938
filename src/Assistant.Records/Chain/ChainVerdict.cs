namespace Assistant.Records.Chain;

/// <summary>What a check of the log found.</summary>
/// <param name="Broken">The first event that does not fit, or null where all fit.</param>
public sealed record ChainVerdict(int Visits, int Events, BrokenLink? Broken)
{
    public bool Holds => Broken is null;
}

/// <summary>An event that does not fit the chain. Every event after it in the same visit is in doubt too.</summary>
/// <param name="Why">What does not fit, in one line.</param>
public sealed record BrokenLink(string VisitId, int Number, string Why);
