using System.Text.Json;
using Assistant.Dialogue.Replies;
using Assistant.Records.Chain;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;

namespace Assistant.Records.Log;

/// <summary>One transaction's work: checks each append against what is stored and against those before it, and adds its rows.</summary>
internal sealed class WriteUnit(RecordsContext context, ILogTables tables)
{
    public async Task<AppendResult> AddAsync(PreparedAppend prepared)
    {
        var append = prepared.Append;
        if (append.Answer is { Message: var asked } && await tables.ReplyAsync(asked.Channel, asked.MessageId) is { } applied)
        {
            return new AlreadyApplied(JsonSerializer.Deserialize<Reply>(applied, EventJson.Options)!);
        }

        var visit = append.Opening is { } opening ? await OpenAsync(append.VisitId, opening) : await tables.VisitAsync(append.VisitId);
        if (visit is null || visit.Version != append.ExpectedVersion)
        {
            return new Conflict();
        }

        var first = visit.Version + 1;
        foreach (var (happened, made) in append.Events.Zip(prepared.Events))
        {
            var row = EventChain.Link(visit.Id, visit.Version + 1, visit.HeadHash, happened.At, made);
            await tables.AddAsync(row);
            visit.Version = row.Number;
            visit.HeadHash = row.Hash;
        }

        if (append.Erasure is { } erasure)
        {
            await erasure.ApplyAsync(context, visit.Id);
        }

        await Projections.ApplyAsync(context, visit, first, append.Events);
        await tables.MovedAsync(visit);
        if (append.Answer is { } answer)
        {
            await StoreAsync(answer, prepared.Reply!, visit);
        }

        await tables.EndAsync();
        return new Appended(visit.Version);
    }

    private async Task StoreAsync(Answer answer, string reply, VisitRow visit)
    {
        var message = answer.Message;
        await tables.AddAsync(new MessageRow { Channel = message.Channel, MessageId = message.MessageId, VisitId = visit.Id, Version = visit.Version, Reply = reply });
        if (answer.Outbox)
        {
            context.Outbox.Add(new() { Channel = message.Channel, Conversation = message.Conversation, MessageId = message.MessageId, Reply = reply, Due = message.At, VisitId = visit.Id, Version = visit.Version });
        }
    }

    /// <summary>The new visit with the conversation on it; null where the conversation is not where the caller believed.</summary>
    private async Task<VisitRow?> OpenAsync(string visitId, Opening opening)
    {
        if (await tables.VisitAsync(visitId) is not null || await tables.VisitOfAsync(opening.Channel, opening.Conversation) != opening.Replaces)
        {
            return null;
        }

        var opened = opening.Opened;
        var visit = new VisitRow { Id = visitId, Site = opened.Site, AssetId = opened.AssetId, OpenedAt = opened.At, HeadHash = EventChain.Start(visitId) };
        await tables.AddAsync(visit);
        await tables.TurnAsync(opening.Channel, opening.Conversation, visitId);
        return visit;
    }
}
