using Assistant.Records.Assets;
using Assistant.Records.Conversations;
using Assistant.Records.Cylinders;
using Assistant.Records.Log;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Storage.Postgres;

/// <summary>The questions of every turn, made once and not looked up by their shape each time.</summary>
internal sealed class CompiledLookups(IRecordsDatabase database, string connection) : ITurnLookups
{
    private readonly CurrentVisits current = new(database, connection);

    private readonly Func<RecordsContext, CancellationToken, Task<bool>> firms = EF.CompileAsyncQuery((RecordsContext context, CancellationToken cancellation) => context.Firms.Any());

    private readonly Func<RecordsContext, DateTimeOffset?, DateTimeOffset?, IAsyncEnumerable<CylinderRow>> cylinders = EF.CompileAsyncQuery(
        (RecordsContext context, DateTimeOffset? since, DateTimeOffset? until) =>
            from happened in context.Events.AsNoTracking()
            where happened.Kind == EventJson.CylinderUsedKind || happened.Kind == EventJson.EventWithdrawnKind
            join visit in context.Visits.AsNoTracking() on happened.VisitId equals visit.Id
            where (since == null || visit.OpenedAt >= since) && (until == null || visit.OpenedAt <= until)
            orderby happened.VisitId, happened.Number
            select new CylinderRow(happened.VisitId, happened.Number, happened.Kind, happened.Body, happened.Personal, visit.AssetId));

    public Task<CurrentVisit?> CurrentVisitAsync(string channel, string conversation, CancellationToken cancellation) =>
        current.OfAsync(channel, conversation, cancellation);

    public Task<bool> HasFirmsAsync(CancellationToken cancellation) => database.UseAsync(context => firms(context, cancellation));

    public Task<IReadOnlyList<OpenVisit>> OpenVisitsAsync(string channel, int most, CancellationToken cancellation) => database.UseAsync(async context =>
        (IReadOnlyList<OpenVisit>)await (
            from conversation in context.Conversations.AsNoTracking()
            where conversation.Channel == channel
            join visit in context.Visits.AsNoTracking() on conversation.VisitId equals visit.Id
            where visit.ClosedAt == null
            orderby visit.OpenedAt descending
            select new OpenVisit(conversation.Conversation, visit.Id, visit.Site, visit.OpenedAt)).Take(most).ToListAsync(cancellation));

    public Task<IReadOnlyList<AssetName>> AssetsAsync(CancellationToken cancellation) => database.UseAsync(async context =>
        (IReadOnlyList<AssetName>)await context.Assets.AsNoTracking().OrderBy(a => a.Site).ThenBy(a => a.Unit).Select(a => new AssetName(a.Id, a.Site, a.Unit)).ToListAsync(cancellation));

    public Task<IReadOnlyList<CylinderRow>> CylinderRowsAsync(DateTimeOffset? since, DateTimeOffset? until, CancellationToken cancellation) =>
        database.UseAsync(async context => (IReadOnlyList<CylinderRow>)await cylinders(context, since, until).ToListAsync(cancellation));

    public void Dispose()
    {
        // It holds no line of its own.
    }
}
