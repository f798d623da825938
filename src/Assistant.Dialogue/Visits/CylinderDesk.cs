using System.Collections.Immutable;
using Assistant.Dialogue.Cylinders;
using Assistant.Trade.Ledgers;

namespace Assistant.Dialogue.Visits;

/// <summary>The cylinders of a visit: what was known of them, what was told and used here. The fold of its events.</summary>
public sealed record CylinderDesk
{
    public static CylinderDesk Empty { get; } = new();

    /// <summary>The cylinders known when the visit opened, by tag.</summary>
    public ImmutableSortedDictionary<string, KnownCylinder> Known { get; init; } = ImmutableSortedDictionary.Create<string, KnownCylinder>(StringComparer.OrdinalIgnoreCase);

    internal ImmutableList<VisitEvent> Told { get; init; } = [];

    /// <summary>The uses on this visit that count.</summary>
    public IEnumerable<CylinderUsed> Uses => CylinderUsed.Counting(Told.OfType<CylinderUsed>());

    /// <summary>What is being told of a cylinder, or after a use the cylinder as it was left; null before the first.</summary>
    public CylinderNoted? Current => Told.IsEmpty ? null : Told[^1] switch
    {
        CylinderNoted noted => noted,
        CylinderUsed used => Left(used),
        _ => null,
    };

    /// <summary>What is asked back for, or null.</summary>
    public string? Asks => Current?.Asks;

    /// <summary>A cylinder as it is known now, with nothing under way; null where its tag was never said.</summary>
    public CylinderNoted? Find(string tag)
    {
        var last = Told.FindLast(e => TagOf(e) is { } told && told.Equals(tag, StringComparison.OrdinalIgnoreCase));
        return last switch
        {
            CylinderUsed used => Left(used),
            CylinderNoted noted => noted with { Purpose = null, Reason = null, AfterGrams = null, AmountGrams = null, LossGrams = null, Asks = null },
            _ => Known.TryGetValue(tag, out var known)
                ? new() { At = default, By = "", Tag = known.Tag, CylinderKind = known.Kind, Refrigerant = known.Refrigerant, TareGrams = known.TareGrams, BeforeGrams = known.GrossGrams, WaterCapacityGrams = known.WaterCapacityGrams }
                : null,
        };
    }

    /// <summary>The ledger of this visit's uses.</summary>
    /// <param name="assetId">The equipment; any fixed name where none is on record.</param>
    public CylinderLedger Ledger(string assetId)
    {
        var known = Known.Values.Where(k => k.TareGrams is not null).Aggregate(CylinderLedger.Empty, (ledger, k) => ledger.With(
            new(k.Tag, CylinderNames.Kind(k.Kind), k.Kind == "supply" ? k.Refrigerant : null, new(k.TareGrams!.Value)) { WaterCapacity = k.WaterCapacityGrams is { } water ? new(water) : null }));
        return Uses.Aggregate(known, (ledger, used) => ledger.Admit(used, assetId).Ledger);
    }

    /// <summary>What went into the equipment on this visit.</summary>
    public Grams Charged => Moved(EntryPurpose.Charge);

    /// <summary>What came out of the equipment on this visit.</summary>
    public Grams Recovered => Moved(EntryPurpose.Recover);

    internal CylinderDesk Add(VisitEvent told) => this with { Told = Told.Add(told) };

    internal CylinderDesk Without(int number) => this with { Told = Told.RemoveAll(e => e.Number == number) };

    private Grams Moved(EntryPurpose purpose) =>
        new(Uses.Where(u => u.Purpose == CylinderNames.Of(purpose)).Sum(u => Math.Abs(u.GrossAfterGrams - u.GrossBeforeGrams)));

    private static string? TagOf(VisitEvent told) => told switch
    {
        CylinderNoted noted => noted.Tag,
        CylinderUsed used => used.Tag,
        _ => null,
    };

    private static CylinderNoted Left(CylinderUsed used) => new()
    {
        At = used.At,
        By = used.By,
        Tag = used.Tag,
        CylinderKind = used.CylinderKind,
        Refrigerant = used.Refrigerant,
        TareGrams = used.TareGrams,
        BeforeGrams = used.GrossAfterGrams,

        // A recovery cylinder's was asked for before its use was taken.
        WaterCapacityGrams = used.WaterCapacityGrams ?? (used.CylinderKind == CylinderNames.Of(CylinderKind.Recovery) ? 0 : null),
        IsWeighedHere = true,
    };
}
