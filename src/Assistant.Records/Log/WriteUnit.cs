using System.Text.Json;
using Assistant.Dialogue.Replies;
using Assistant.Records.Chain;
using Assistant.Records.Rooms;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Log;

/// <summary>One transaction's work: checks each append against what is stored and against those before it, and adds its rows.</summary>
internal sealed class WriteUnit
{
    private readonly RecordsContext context;
    private readonly Dictionary<string, VisitRow> visits;
    private readonly Dictionary<(string Channel, string Id), MessageRow> messages;

    private WriteUnit(RecordsContext context, Dictionary<string, VisitRow> visits, Dictionary<(string, string), MessageRow> messages)
    {
        this.context = context;
        this.visits = visits;
        this.messages = messages;
    }

    public static async Task<WriteUnit> BeginAsync(RecordsContext context, List<Append> appends)
    {
        var visitIds = appends.Select(a => a.VisitId).Distinct().ToList();
        var channels = appends.Select(a => a.Answer?.Message.Channel).OfType<string>().Distinct().ToList();
        var messageIds = appends.Select(a => a.Answer?.Message.MessageId).OfType<string>().Distinct().ToList();
        var visits = await context.HeldVisits(visitIds).ToDictionaryAsync(v => v.Id);
        var messages = await context.Messages.Where(m => channels.Contains(m.Channel) && messageIds.Contains(m.MessageId)).ToDictionaryAsync(m => (m.Channel, m.MessageId));
        return new(context, visits, messages);
    }

    public async Task<AppendResult> AddAsync(Append append)
    {
        if (append.Answer is { } asked && messages.TryGetValue((asked.Message.Channel, asked.Message.MessageId), out var applied))
        {
            return new AlreadyApplied(JsonSerializer.Deserialize<Reply>(applied.Reply, EventJson.Options)!);
        }

        var visit = append.Opening is { } opening ? await OpenAsync(append.VisitId, opening) : visits.GetValueOrDefault(append.VisitId);
        if (visit is null || visit.Version != append.ExpectedVersion)
        {
            return new Conflict();
        }

        var first = visit.Version + 1;
        foreach (var happened in append.Events)
        {
            var row = EventChain.Link(visit.Id, visit.Version + 1, visit.HeadHash, happened.At, EventJson.Write(happened));
            context.Events.Add(row);
            visit.Version = row.Number;
            visit.HeadHash = row.Hash;
        }

        if (append.Erasure is { } erasure)
        {
            await erasure.ApplyAsync(context, visit.Id);
        }

        await Projections.ApplyAsync(context, visit, first, append.Events);
        if (append.Answer is { } answer)
        {
            Store(answer, visit);
        }

        return new Appended(visit.Version);
    }

    private void Store(Answer answer, VisitRow visit)
    {
        var message = answer.Message;
        var reply = JsonSerializer.Serialize(answer.Reply, EventJson.Options);
        var row = new MessageRow { Channel = message.Channel, MessageId = message.MessageId, VisitId = visit.Id, Version = visit.Version, Reply = reply };
        messages.Add((message.Channel, message.MessageId), row);
        context.Messages.Add(row);
        if (answer.Outbox)
        {
            context.Outbox.Add(new() { Channel = message.Channel, Conversation = message.Conversation, MessageId = message.MessageId, Reply = reply, Due = message.At, VisitId = visit.Id, Version = visit.Version });
        }
    }

    /// <summary>The new visit with the conversation on it; null where the conversation is not where the caller believed.</summary>
    private async Task<VisitRow?> OpenAsync(string visitId, Opening opening)
    {
        var conversation = await context.Conversations.FindAsync(opening.Channel, opening.Conversation);
        if (visits.ContainsKey(visitId) || conversation?.VisitId != opening.Replaces)
        {
            return null;
        }

        var opened = opening.Opened;
        var visit = new VisitRow { Id = visitId, Site = opened.Site, AssetId = opened.AssetId, OpenedAt = opened.At, HeadHash = EventChain.Start(visitId) };
        visits.Add(visitId, visit);
        context.Visits.Add(visit);
        if (conversation is null)
        {
            context.Conversations.Add(new() { Channel = opening.Channel, Conversation = opening.Conversation, VisitId = visitId });
        }
        else
        {
            conversation.VisitId = visitId;
        }

        await RoomBinding.BindAsync(context, opening.Channel, opening.Conversation, visitId, told: 0);
        return visit;
    }
}
