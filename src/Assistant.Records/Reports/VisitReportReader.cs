using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Assets;
using Assistant.Records.Cylinders;
using Assistant.Records.Log;
using Assistant.Records.Pictures;
using Assistant.Records.Readings;
using Assistant.Records.Reports.Model;
using Assistant.Records.Storage;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Microsoft.EntityFrameworkCore;
using UnitsNet;

namespace Assistant.Records.Reports;

/// <summary>Reads a visit's report from the records.</summary>
public sealed class VisitReportReader(EventLog log, PictureStore pictures)
{
    private readonly AssetStore assets = new(log.Database);
    private readonly CylinderBookReader cylinders = new(log);
    private readonly LeakWorkReader leaks = new(log);

    /// <returns>The report, or null where there is no such visit.</returns>
    public async Task<VisitReport?> ReadAsync(string visitId, CancellationToken cancellation = default)
    {
        var events = await log.ReadAsync(visitId, cancellation);
        if (events.IsEmpty)
        {
            return null;
        }

        // The head of what was read, not of what may have come in since.
        var head = await log.Database.UseAsync(context => context.Events.AsNoTracking()
            .Where(e => e.VisitId == visitId && e.Number == events.Length).Select(e => e.Hash).FirstAsync(cancellation));
        var assetId = events.OfType<VisitOpened>().First().AssetId;
        var asset = assetId is null ? null : await assets.FindAsync(assetId, cancellation);
        var kept = new Dictionary<string, EncodedPicture>(StringComparer.Ordinal);
        foreach (var id in events.OfType<PictureTaken>().Select(p => p.PictureId).Distinct())
        {
            if (await pictures.FindAsync(id, cancellation) is { } picture)
            {
                kept.Add(id, picture);
            }
        }

        var report = VisitReportBuilder.Build(
            visitId, events, asset?.Unit, taken => Of(taken, kept.GetValueOrDefault(taken.PictureId)),
            new(RefrigerantLibrary.DataVersion, events.Length, Convert.ToHexStringLower(head)));
        return await WithRefrigerantAsync(report, events, asset, cancellation);
    }

    /// <summary>The cylinders' accounts and the leak rate as they stood at the visit's last word: printed again later, they are the same.</summary>
    private async Task<VisitReport> WithRefrigerantAsync(VisitReport report, ImmutableArray<VisitEvent> events, Asset? asset, CancellationToken cancellation)
    {
        var last = events.Max(e => e.At);
        var uses = await cylinders.UsesAsync(last, cancellation);
        var balances = CylinderBook.Of(uses).Ledger.Balances();
        var tags = report.Cylinders.Select(c => c.Tag).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var facts = VisitState.Fold(events).Facts;
        var charge = facts.Quantity(FactCatalogue.FullCharge, Dimension.Mass) is { } kilograms ? Mass.FromKilograms(kilograms) : (Mass?)null;
        var withdrawn = VisitReadings.Withdrawals(events);
        var work = asset is not null ? await leaks.ReadAsync(asset.Id, last, cancellation)
            : LeakWork.Of(events.Where(e => !withdrawn.ContainsKey(e.Number)).Select(e => (report.VisitId, e)));
        return report with
        {
            Balances = balances with
            {
                Cylinders = balances.Cylinders.RemoveRange(balances.Cylinders.Keys.Where(tag => !tags.Contains(tag))),
                Gaps = [.. balances.Gaps.Where(g => tags.Contains(g.Tag))],
                Mixes = [.. balances.Mixes.Where(m => tags.Contains(m.Tag))],
            },
            IsLeakRepaired = work.RepairVisits.Contains(report.VisitId),
            Leak = asset is null
                ? null
                : LeakAccount.Of(asset, charge, RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant)), uses, work, report.Units, DateOnly.FromDateTime(last.DateTime)),
        };
    }

    private static ReportedPicture Of(PictureTaken taken, EncodedPicture? kept) =>
        new(taken.PictureId, taken.At, taken.By, taken.Caption, kept?.Jpeg, kept?.Width ?? 0, kept?.Height ?? 0);
}
