using Assistant.Records.Log;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Storage.Postgres;

/// <summary>The questions of every turn, made once and not looked up by their shape each time.</summary>
internal sealed class CompiledLookups(IRecordsDatabase database) : ITurnLookups
{
    private readonly Func<RecordsContext, string, string, CancellationToken, Task<CurrentVisit?>> current = EF.CompileAsyncQuery(
        (RecordsContext context, string channel, string conversation, CancellationToken cancellation) => context.Conversations.AsNoTracking()
            .Where(c => c.Channel == channel && c.Conversation == conversation)
            .Join(context.Visits, c => c.VisitId, v => v.Id, (c, v) => new CurrentVisit(v.Id, v.Version, v.OpenedAt, v.ClosedAt))
            .FirstOrDefault());

    private readonly Func<RecordsContext, CancellationToken, Task<bool>> firms = EF.CompileAsyncQuery((RecordsContext context, CancellationToken cancellation) => context.Firms.Any());

    public Task<CurrentVisit?> CurrentVisitAsync(string channel, string conversation, CancellationToken cancellation) =>
        database.UseAsync(context => current(context, channel, conversation, cancellation));

    public Task<bool> HasFirmsAsync(CancellationToken cancellation) => database.UseAsync(context => firms(context, cancellation));

    public void Dispose()
    {
        // It holds no line of its own.
    }
}
