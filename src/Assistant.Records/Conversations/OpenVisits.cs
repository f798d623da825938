using System.Collections.Immutable;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Conversations;

/// <summary>The visits that a channel's conversations are on and that are not closed.</summary>
public sealed class OpenVisits(IRecordsDatabase database)
{
    /// <summary>Newest first, fifty at most: what lies further back is found in the reports.</summary>
    public Task<ImmutableArray<OpenVisit>> OfChannelAsync(string channel, CancellationToken cancellation = default) => database.UseAsync(async context =>
        (await (
            from conversation in context.Conversations.AsNoTracking()
            where conversation.Channel == channel
            join visit in context.Visits.AsNoTracking() on conversation.VisitId equals visit.Id
            where visit.ClosedAt == null
            orderby visit.OpenedAt descending
            select new OpenVisit(conversation.Conversation, visit.Id, visit.Site, visit.OpenedAt)).Take(50).ToListAsync(cancellation))
        .ToImmutableArray());

    /// <summary>The visit opened last, whether closed or not, or null where there is none.</summary>
    public Task<string?> LastAsync(CancellationToken cancellation = default) => database.UseAsync(context =>
        context.Visits.AsNoTracking().OrderByDescending(v => v.OpenedAt).ThenByDescending(v => v.Id).Select(v => v.Id).FirstOrDefaultAsync(cancellation));
}

/// <summary>A visit under way, with the conversation it is talked about in.</summary>
public sealed record OpenVisit(string Conversation, string VisitId, string Site, DateTimeOffset OpenedAt);
