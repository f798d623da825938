using Assistant.Trade.Ledgers;
using UnitsNet;

namespace Assistant.Trade.Tests.Ledgers;

/// <summary>An invented house with two cylinders; weights in grams.</summary>
internal static class LedgerScene
{
    public static DateTimeOffset Morning { get; } = new(2026, 2, 3, 8, 0, 0, TimeSpan.Zero);

    public static Cylinder Supply { get; } = new("S1", CylinderKind.Supply, "R448A", new Grams(5_000));

    // Water capacity 21.6 kg; at 1100 kg/m3 it may hold 19 008 g.
    public static Cylinder Recovery { get; } = new("R1", CylinderKind.Recovery, null, new Grams(12_000)) { WaterCapacity = new Grams(21_600) };

    public static CylinderLedger House { get; } = CylinderLedger.Empty.With(Supply).With(Recovery);

    public static Density? Density(string refrigerant) => refrigerant switch
    {
        "R448A" => UnitsNet.Density.FromKilogramsPerCubicMeter(1100),
        "R404A" => UnitsNet.Density.FromKilogramsPerCubicMeter(1040),
        _ => null,
    };

    public static CylinderEntry Entry(Cylinder cylinder, EntryPurpose purpose, long before, long after, int minute = 0, string? asset = "rack", string refrigerant = "R448A") => new()
    {
        Id = $"{cylinder.Tag}-{minute}-{before}-{after}",
        At = Morning.AddMinutes(minute),
        By = "tech",
        Tag = cylinder.Tag,
        Tare = cylinder.Tare,
        GrossBefore = new Grams(before),
        GrossAfter = new Grams(after),
        Purpose = purpose,
        AssetId = asset,
        Refrigerant = refrigerant,
    };

    public static CylinderLedger Taken(params IEnumerable<CylinderEntry> entries) => entries.Aggregate(House, (ledger, entry) =>
    {
        var admission = ledger.Admit(entry, Density);
        Assert.Null(admission.Refusal);
        return admission.Ledger;
    });

    public static Refusal? RefusalOf(CylinderEntry entry) => House.Admit(entry, Density).Refusal;
}
