using System.Collections.Immutable;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Assets;

/// <summary>The equipment on record.</summary>
public sealed class AssetStore(IRecordsDatabase database)
{
    /// <summary>The asset as it is known now, or null.</summary>
    public Task<Asset?> FindAsync(string id, CancellationToken cancellation = default) => database.UseAsync(async context =>
    {
        var row = await context.Assets.AsNoTracking().FirstOrDefaultAsync(a => a.Id == id, cancellation);
        if (row is null)
        {
            return null;
        }

        var facts = await context.AssetFacts.AsNoTracking().Where(f => f.AssetId == id).OrderBy(f => f.Sequence).ToListAsync(cancellation);
        return new Asset(row.Id, row.Site, row.Unit, Newest(facts));
    });

    /// <summary>Every asset's id, site and unit, by site; without their details.</summary>
    public async Task<ImmutableArray<Asset>> ListAsync(CancellationToken cancellation = default) =>
        [.. (await database.Lookups.AssetsAsync(cancellation)).Select(a => new Asset(a.Id, a.Site, a.Unit, ImmutableSortedDictionary<string, string>.Empty))];

    /// <summary>Records the asset, or brings its record up to date: a detail that changed is added, the old value stays as history.</summary>
    public Task<int> RecordAsync(Asset asset, DateTimeOffset at, CancellationToken cancellation = default) => database.WriteAsync(async context =>
    {
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await context.HoldAsync($"asset {asset.Id}", cancellation);
        if (await context.Assets.FindAsync([asset.Id], cancellation) is { } row)
        {
            (row.Site, row.Unit) = (asset.Site, asset.Unit);
        }
        else
        {
            context.Assets.Add(new() { Id = asset.Id, Site = asset.Site, Unit = asset.Unit });
        }

        var facts = await context.AssetFacts.Where(f => f.AssetId == asset.Id).OrderBy(f => f.Sequence).ToListAsync(cancellation);
        var known = Newest(facts);
        var next = (facts.LastOrDefault()?.Sequence ?? 0) + 1;
        foreach (var (name, text) in asset.Details.Where(d => known.GetValueOrDefault(d.Key) != d.Value))
        {
            context.AssetFacts.Add(new() { AssetId = asset.Id, Sequence = next++, Name = name, Text = text, At = at });
        }

        var changed = await context.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return changed;
    }, cancellation);

    internal static ImmutableSortedDictionary<string, string> Newest(IEnumerable<AssetFactRow> inOrder)
    {
        var newest = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var fact in inOrder)
        {
            newest[fact.Name] = fact.Text;
        }

        return newest.ToImmutable();
    }
}
