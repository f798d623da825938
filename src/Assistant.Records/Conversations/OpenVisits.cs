using System.Collections.Immutable;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Conversations;

/// <summary>The visits that a channel's conversations are on and that are not closed.</summary>
public sealed class OpenVisits(IRecordsDatabase database)
{
    private const int Most = 50;

    /// <summary>Newest first, fifty at most: what lies further back is found in the reports.</summary>
    public async Task<ImmutableArray<OpenVisit>> OfChannelAsync(string channel, CancellationToken cancellation = default) =>
        [.. await database.Lookups.OpenVisitsAsync(channel, Most, cancellation)];

    /// <summary>The visit opened last, whether closed or not, or null where there is none.</summary>
    public Task<string?> LastAsync(CancellationToken cancellation = default) => database.UseAsync(context =>
        context.Visits.AsNoTracking().OrderByDescending(v => v.OpenedAt).ThenByDescending(v => v.Id).Select(v => v.Id).FirstOrDefaultAsync(cancellation));
}

/// <summary>A visit under way, with the conversation it is talked about in.</summary>
public sealed record OpenVisit(string Conversation, string VisitId, string Site, DateTimeOffset OpenedAt);
