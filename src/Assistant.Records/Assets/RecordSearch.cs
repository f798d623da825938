using System.Collections.Immutable;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Assets;

/// <summary>Finds equipment and visits by words of the site's or the unit's name.</summary>
public sealed class RecordSearch(IRecordsDatabase database)
{
    private const int Most = 20;
    private const char Escape = '\\';

    /// <summary>Equipment whose site, unit or id holds every word, by site.</summary>
    public Task<ImmutableArray<Asset>> AssetsAsync(string words, CancellationToken cancellation = default) => database.UseAsync(async context =>
    {
        var found = context.Assets.AsNoTracking();
        foreach (var pattern in Patterns(words))
        {
            found = found.Where(a => EF.Functions.Like((a.Site + " " + a.Unit + " " + a.Id).ToLower(), pattern, $"{Escape}"));
        }

        return (await found.OrderBy(a => a.Site).ThenBy(a => a.Unit).Take(Most).ToListAsync(cancellation))
            .Select(a => new Asset(a.Id, a.Site, a.Unit, ImmutableSortedDictionary<string, string>.Empty)).ToImmutableArray();
    });

    /// <summary>A channel's visits whose site holds every word, the newest first.</summary>
    public Task<ImmutableArray<FoundVisit>> VisitsAsync(string channel, string words, CancellationToken cancellation = default) =>
        FindAsync(channel, visits => Patterns(words).Aggregate(visits, (found, pattern) => found.Where(v => EF.Functions.Like(v.Site.ToLower(), pattern, $"{Escape}"))), cancellation);

    /// <summary>A channel's visits to a piece of equipment, the newest first.</summary>
    public Task<ImmutableArray<FoundVisit>> VisitsToAsync(string channel, string assetId, CancellationToken cancellation = default) =>
        FindAsync(channel, visits => visits.Where(v => v.AssetId == assetId), cancellation);

    private Task<ImmutableArray<FoundVisit>> FindAsync(
        string channel, Func<IQueryable<Storage.Rows.VisitRow>, IQueryable<Storage.Rows.VisitRow>> which, CancellationToken cancellation) => database.UseAsync(async context =>
        (await (
            from visit in which(context.Visits.AsNoTracking())
            join conversation in context.Conversations.AsNoTracking() on visit.Id equals conversation.VisitId
            where conversation.Channel == channel
            orderby visit.OpenedAt descending
            select new FoundVisit(conversation.Conversation, visit.Id, visit.Site, visit.OpenedAt, visit.ClosedAt)).Take(Most).ToListAsync(cancellation))
        .DistinctBy(found => found.VisitId).ToImmutableArray());

    private static IEnumerable<string> Patterns(string words) => words.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Take(6)
        .Select(word => $"%{word.ToLowerInvariant().Replace($"{Escape}", $"{Escape}{Escape}", StringComparison.Ordinal).Replace("%", $"{Escape}%", StringComparison.Ordinal).Replace("_", $"{Escape}_", StringComparison.Ordinal)}%");
}

/// <summary>A visit that was found, with the conversation it is talked about in.</summary>
public sealed record FoundVisit(string Conversation, string VisitId, string Site, DateTimeOffset OpenedAt, DateTimeOffset? ClosedAt);
