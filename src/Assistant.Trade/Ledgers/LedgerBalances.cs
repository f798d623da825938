using System.Collections.Immutable;

namespace Assistant.Trade.Ledgers;

/// <summary>
/// One cylinder's account:
/// opening - charged - hose loss - transferred out + recovered + transferred in + unexplained = remaining, to the gram.
/// </summary>
/// <param name="Opening">Contents before the first entry.</param>
/// <param name="Unexplained">The sum of the gaps; negative where refrigerant went missing between entries.</param>
/// <param name="Remaining">Contents after the last entry.</param>
/// <param name="Refrigerants">What is in it: its label, and what came in since it was last empty.</param>
public sealed record CylinderBalance(
    string Tag,
    Grams Opening,
    Grams Charged,
    Grams Recovered,
    Grams HoseLoss,
    Grams TransferredIn,
    Grams TransferredOut,
    Grams Unexplained,
    Grams Remaining,
    ImmutableSortedSet<string> Refrigerants);

/// <summary>One asset's account: what went into it and came out of it.</summary>
public sealed record AssetBalance(string AssetId, Grams Charged, Grams Recovered)
{
    /// <summary>Charged less recovered; negative where more came out than was put in on record.</summary>
    public Grams Net => Charged - Recovered;
}

/// <summary>A weight that does not follow: the scale before <paramref name="Later"/> is not the scale after <paramref name="Earlier"/>.</summary>
/// <param name="Difference">Gross before the later entry less gross after the earlier; negative where refrigerant went missing.</param>
public sealed record LedgerGap(string Tag, CylinderEntry Earlier, CylinderEntry Later, Grams Difference);

/// <summary>A refrigerant that met another one, or came from a cylinder labelled otherwise.</summary>
/// <param name="Entry">The entry that did it.</param>
/// <param name="Present">What the cylinder held or its label says.</param>
public sealed record RefrigerantMix(string Tag, CylinderEntry Entry, ImmutableSortedSet<string> Present);

/// <summary>The fold of a ledger.</summary>
/// <param name="Cylinders">By tag; those without an entry are left out.</param>
/// <param name="TransferLoss">What left cylinders in transfers less what arrived; negative where more arrived than left.</param>
public sealed record LedgerBalances(
    ImmutableSortedDictionary<string, CylinderBalance> Cylinders,
    ImmutableSortedDictionary<string, AssetBalance> Assets,
    ImmutableArray<LedgerGap> Gaps,
    ImmutableArray<RefrigerantMix> Mixes,
    Grams TransferLoss)
{
    /// <summary>True where every weight follows from the one before it and no transfer gained mass.</summary>
    public bool Closes => Gaps.IsEmpty && TransferLoss >= Grams.Zero;
}
