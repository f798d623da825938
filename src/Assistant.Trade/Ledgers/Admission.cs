namespace Assistant.Trade.Ledgers;

/// <summary>The answer to an entry: the ledger with it, or the ledger as it was and the reason.</summary>
/// <param name="FillLimit">
/// The most the cylinder may hold, for an entry that fills it; null where its water capacity or a density is not known, so that
/// the fill could not be judged, and for an entry that does not fill it.
/// </param>
public sealed record Admission(CylinderLedger Ledger, Refusal? Refusal, Grams? FillLimit = null)
{
    public bool IsRefused => Refusal is not null;
}
