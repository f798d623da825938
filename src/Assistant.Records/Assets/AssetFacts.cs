using System.Collections.Frozen;
using System.Globalization;
using Assistant.Dialogue.Visits;
using Assistant.Records.Storage;
using Assistant.Trade.Facts;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Assets;

/// <summary>Which facts belong to the equipment and not to the day, and how they are carried from a visit to its record.</summary>
public static class AssetFacts
{
    /// <summary>
    /// What stands on a nameplate or is built in, and so holds on the next visit too. A setting that people turn (the setpoint) is
    /// read anew each time; it is in the history and not here.
    /// </summary>
    public static FrozenSet<string> Kept { get; } = FactCatalogue.All
        .Where(f => f.Place == Place.Record)
        .Concat([FactCatalogue.MeteringDevice, FactCatalogue.LiquidReceiver, FactCatalogue.RatedCurrent])
        .Select(f => f.Name)
        .ToFrozenSet();

    internal static bool IsKept(FactTaken taken) => Kept.Contains(taken.Fact);

    /// <summary>The value as a person would write it, such as "20 degF" or "txv".</summary>
    public static string TextOf(FactTaken taken)
    {
        ArgumentNullException.ThrowIfNull(taken);
        return taken.Value is { } value
            ? string.Create(CultureInfo.InvariantCulture, $"{value:0.######} {taken.Unit}").TrimEnd()
            : taken.Word ?? "";
    }

    /// <summary>Adds the value to the asset's record, unless the record says the same already.</summary>
    internal static async Task CarryAsync(RecordsContext context, string assetId, FactTaken taken, string visitId, int number)
    {
        var text = TextOf(taken);
        var stored = await context.AssetFacts.Where(f => f.AssetId == assetId).ToListAsync();
        var all = stored.Concat(context.AssetFacts.Local.Where(f => f.AssetId == assetId)).Distinct().OrderBy(f => f.Sequence).ToList();
        if (all.LastOrDefault(f => f.Name == taken.Fact)?.Text != text)
        {
            var next = (all.LastOrDefault()?.Sequence ?? 0) + 1;
            context.AssetFacts.Add(new() { AssetId = assetId, Sequence = next, Name = taken.Fact, Text = text, At = taken.At, VisitId = visitId, EventNumber = number });
        }
    }
}
