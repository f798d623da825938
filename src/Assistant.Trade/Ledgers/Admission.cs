namespace Assistant.Trade.Ledgers;

/// <summary>The answer to an entry: the ledger with it, or the ledger as it was and the reason.</summary>
public sealed record Admission(CylinderLedger Ledger, Refusal? Refusal)
{
    public bool IsRefused => Refusal is not null;
}
