using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Rooms;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Storage.Postgres;

/// <summary>The tables of the log as the context tracks them: looked up together at the beginning and written together at the end, for a database where each way there and back counts.</summary>
internal sealed class TrackedTables : ILogTables
{
    private readonly RecordsContext context;
    private readonly Dictionary<string, VisitRow> visits;
    private readonly Dictionary<(string Channel, string Id), MessageRow> messages;

    private TrackedTables(RecordsContext context, Dictionary<string, VisitRow> visits, Dictionary<(string, string), MessageRow> messages) =>
        (this.context, this.visits, this.messages) = (context, visits, messages);

    /// <param name="held">The visits of these ids, held until the transaction ends.</param>
    /// <param name="sent">The messages of these channels and ids, pair by pair.</param>
    public static async Task<TrackedTables> LoadAsync(
        RecordsContext context, IReadOnlyList<Append> appends, Func<string[], IQueryable<VisitRow>> held, Func<string[], string[], IQueryable<MessageRow>> sent)
    {
        var messages = appends.Select(a => a.Answer?.Message).OfType<InboundMessage>().Select(m => (m.Channel, Id: m.MessageId)).Distinct().ToList();
        return new(
            context,
            await held([.. appends.Select(a => a.VisitId).Distinct()]).ToDictionaryAsync(v => v.Id),
            messages.Count == 0 ? [] : await sent([.. messages.Select(m => m.Channel)], [.. messages.Select(m => m.Id)]).ToDictionaryAsync(m => (m.Channel, m.MessageId)));
    }

    public Task<VisitRow?> VisitAsync(string id) => Task.FromResult(visits.GetValueOrDefault(id));

    public Task<string?> ReplyAsync(string channel, string messageId) => Task.FromResult(messages.GetValueOrDefault((channel, messageId))?.Reply);

    public async Task<string?> VisitOfAsync(string channel, string conversation) => (await context.Conversations.FindAsync(channel, conversation))?.VisitId;

    public Task AddAsync(VisitRow visit)
    {
        visits.Add(visit.Id, visit);
        context.Visits.Add(visit);
        return Task.CompletedTask;
    }

    public Task AddAsync(EventRow happened)
    {
        context.Events.Add(happened);
        return Task.CompletedTask;
    }

    public Task AddAsync(MessageRow message)
    {
        messages.Add((message.Channel, message.MessageId), message);
        context.Messages.Add(message);
        return Task.CompletedTask;
    }

    public async Task TurnAsync(string channel, string conversation, string visitId)
    {
        if (await context.Conversations.FindAsync(channel, conversation) is { } known)
        {
            known.VisitId = visitId;
        }
        else
        {
            context.Conversations.Add(new() { Channel = channel, Conversation = conversation, VisitId = visitId });
        }

        await RoomBinding.BindAsync(context, channel, conversation, visitId, told: 0);
    }

    /// <summary>The context sees by itself that it moved.</summary>
    public Task MovedAsync(VisitRow visit) => Task.CompletedTask;

    public Task EndAsync() => Task.CompletedTask;
}
