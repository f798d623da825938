using System.Text.Json;
using Assistant.App.Web;
using Assistant.Dialogue.Visits;
using Assistant.Records.Chain;
using Microsoft.EntityFrameworkCore;

namespace Assistant.EndToEnd.Tests.Chaos;

/// <summary>What must hold after a run: every acknowledged answer there once with the same words, no reply doubled, no reminder missed or repeated.</summary>
internal sealed class ChaosChecks(ChaosRun run)
{
    private static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web);

    private readonly Dictionary<string, IReadOnlyList<VisitEvent>> logs = new(StringComparer.Ordinal);

    public int Events { get; private set; }

    public async Task CheckAsync()
    {
        foreach (var answers in run.Ledger.All.GroupBy(a => (a.Channel, a.Conversation)))
        {
            await CheckConversationAsync(answers.Key.Channel, answers.Key.Conversation, [.. answers]);
        }

        await CheckTextsAsync();
        await CheckRemindersAsync();
        var verdict = await new ChainVerifier(run.Log.Database).VerifyAsync();
        Assert.True(verdict.Holds, verdict.Broken?.Why);
        Events = verdict.Events;
    }

    private async Task CheckConversationAsync(string channel, string conversation, List<Acknowledged> answers)
    {
        var visit = await run.Log.VisitOfAsync(channel, conversation) ?? throw new InvalidOperationException($"The visit of {conversation} is gone.");
        logs[visit] = await run.Log.ReadAsync(visit);
        var heard = logs[visit].OfType<MessageHeard>().CountBy(m => m.MessageId).ToDictionary();
        Assert.All(heard, m => Assert.True(m.Value == 1, $"{m.Key} is on record {m.Value} times."));
        foreach (var answer in answers)
        {
            Assert.True(heard.ContainsKey(answer.MessageId), $"{answer.MessageId} was acknowledged and is not on record.");
            if (answer.Reply is { } told)
            {
                var stored = await run.Log.ReplyToAsync(channel, answer.MessageId);
                Assert.Equal(told, JsonSerializer.SerializeToNode(ReplyView.Of(stored!), Web)!.ToJsonString());
            }
        }
    }

    // One reply to each text, given to the gateway once; and no text on a phone that is neither reply nor reminder.
    private async Task CheckTextsAsync()
    {
        await using var context = run.Log.Database.NewContext();
        var replies = await context.Outbox.AsNoTracking().Where(o => o.Channel == "sms").ToListAsync();
        Assert.All(run.Ledger.All.Where(a => a.Channel == "sms"), a => Assert.Single(replies, r => r.MessageId == a.MessageId));
        Assert.All(replies, r => Assert.True(r.DeliveredAt is not null && r.GaveUpAt is null, $"The reply to {r.MessageId} was not delivered."));
        Assert.All(replies, r => Assert.Equal(1, run.Gateway.Taken.GetValueOrDefault(r.Id)));
        Assert.Equal(run.ByText.Sum(t => t.Replies + t.Reminders), replies.Count);
        Assert.All(run.ByText, t => Assert.Equal(0, t.Unasked()));
        Assert.Equal(0, await context.Inbox.CountAsync(i => i.HandledAt == null));
    }

    // The walk sets reminders of its own, for later than the run lasts; those that the technicians asked for are a minute long.
    private async Task CheckRemindersAsync()
    {
        await using var context = run.Log.Database.NewContext();
        var given = (await context.Reminders.AsNoTracking().Where(r => r.DoneAt != null).ToListAsync()).Select(r => (r.VisitId, r.EventNumber)).ToHashSet();
        var asked = logs.SelectMany(l => l.Value.OfType<ReminderSet>().Where(r => r.Due - r.At == TimeSpan.FromMinutes(1)).Select(r => (l.Key, r.Number))).ToHashSet();
        Assert.Equal(asked, given);
        Assert.Equal(asked.Count, run.OnPage.Sum(t => t.Reminders) + run.ByText.Sum(t => t.Reminders));
    }
}
