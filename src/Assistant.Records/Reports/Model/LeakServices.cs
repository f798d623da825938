using System.Collections.Immutable;
using Assistant.Records.Cylinders;
using Assistant.Trade.Regulations;

namespace Assistant.Records.Reports.Model;

/// <summary>From the cylinders' uses at an asset to the services the leak rules count.</summary>
internal static class LeakServices
{
    /// <summary>
    /// One visit is one service: recovered for a repair and put back is not leaked. What is done for the season is a service of its own.
    /// What a visit that found or mended a leak took out, and the next addition puts back, is one service too.
    /// </summary>
    public static ImmutableArray<ServiceEvent> Of(string assetId, IEnumerable<RecordedUse> uses, LeakWork work)
    {
        var services = new List<List<RecordedUse>>();
        List<RecordedUse>? awaited = null;
        foreach (var visit in uses.Where(u => u.AssetId == assetId).GroupBy(u => (u.VisitId, Reason: Reason(u))).OrderBy(g => g.Max(u => u.Used.At)))
        {
            var service = visit.ToList();
            var isTopUp = visit.Key.Reason == AdditionReason.TopUp;
            if (awaited is not null && isTopUp)
            {
                awaited.AddRange(service);
                service = awaited;
            }
            else
            {
                services.Add(service);
            }

            awaited = Balance(assetId, service) is RefrigerantRemoved && isTopUp && (awaited is not null || work.LeakVisits.Contains(visit.Key.VisitId)) ? service : null;
        }

        return [.. services.Select(s => Balance(assetId, s)).OfType<ServiceEvent>()];
    }

    private static ServiceEvent? Balance(string assetId, List<RecordedUse> service) =>
        ServiceBalance.Of(assetId, CylinderBook.Of(service).Ledger.Entries, Reason(service[0]));

    private static AdditionReason Reason(RecordedUse use) => ApplianceDetails.ReasonOf(use.Used.Reason);
}
