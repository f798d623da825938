using Assistant.Dialogue.Visits;
using Assistant.Records.Chain;
using Assistant.Records.Conversations;
using Assistant.Records.Inbox;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.Reminders;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Postgres;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Nodes;

/// <summary>Two programs on one PostgreSQL: what one takes the other leaves, and what one writes the other sees.</summary>
public sealed class TwoNodesTests : IAsyncLifetime
{
    private TemporaryRecords records = null!;
    private IRecordsDatabase other = null!;
    private EventLog otherLog = null!;

    public async Task InitializeAsync()
    {
        records = await TemporaryRecords.OpenAsync(Store.Postgres);
        other = records.Another();
        otherLog = await EventLog.OpenAsync(other);
    }

    public async Task DisposeAsync()
    {
        await otherLog.DisposeAsync();
        await records.DisposeAsync();
    }

    [Fact]
    public async Task Many_turns_on_few_visits_through_both_are_each_taken_once_and_in_order()
    {
        using var one = new ConversationService(records.Log, new CountingEngine());
        using var two = new ConversationService(otherLog, new CountingEngine());
        for (var c = 0; c < 4; c++)
        {
            await one.HandleAsync(Invented.Message($"first-{c}", conversation: $"c-{c}"));
        }

        var replies = await Task.WhenAll(Enumerable.Range(0, 200).Select(i =>
            Task.Run(() => (i % 2 == 0 ? one : two).HandleAsync(Invented.Message($"m-{i}", conversation: $"c-{i / 2 % 4}")))));

        Assert.Equal(Enumerable.Range(2, 50).Select(v => $"38 after {v}").Order(), replies.Select(r => r.Say.Full).Distinct().Order());
        Assert.True((await new ChainVerifier(other).VerifyAsync()).Holds);
    }

    [Fact]
    public async Task Many_who_ask_at_once_which_visit_they_are_on_are_each_told_theirs_and_one_on_none_is_told_so()
    {
        using var one = new ConversationService(records.Log, new CountingEngine());
        for (var c = 0; c < 30; c++)
        {
            await one.HandleAsync(Invented.Message($"first-{c}", conversation: $"c-{c}"));
        }

        var asked = Enumerable.Range(0, 40).Select(c => $"c-{c}").ToList();
        var alone = new List<string?>();
        foreach (var conversation in asked)
        {
            alone.Add(await records.Log.VisitOfAsync("chat", conversation));
        }

        var together = await Task.WhenAll(asked.Select(conversation => Task.Run(() => otherLog.VisitOfAsync("chat", conversation))));

        Assert.Equal(alone, together);
        Assert.Equal(30, together.Take(30).OfType<string>().Distinct().Count());
        Assert.All(together.Skip(30), Assert.Null);
    }

    [Fact]
    public async Task One_message_brought_to_both_at_once_is_applied_once_and_both_give_the_same_reply()
    {
        using var one = new ConversationService(records.Log, new CountingEngine());
        using var two = new ConversationService(otherLog, new CountingEngine());
        for (var i = 0; i < 20; i++)
        {
            var message = Invented.Message($"m-{i}", conversation: $"c-{i}");
            var replies = await Task.WhenAll(Task.Run(() => one.HandleAsync(message)), Task.Run(() => two.HandleAsync(message)));

            Assert.Equal(["38 after 1"], replies.Select(r => r.Say.Full).Distinct());
            Assert.Equal(2, (await otherLog.ReadAsync((await otherLog.VisitOfAsync("chat", $"c-{i}"))!)).Length);
        }
    }

    [Fact]
    public async Task How_a_visit_stands_is_known_to_one_as_soon_as_the_other_wrote()
    {
        using var one = new ConversationService(records.Log, new CountingEngine());
        using var two = new ConversationService(otherLog, new CountingEngine());
        await one.HandleAsync(Invented.Message("m-1"));
        var visit = (await otherLog.VisitOfAsync("chat", "c-1"))!;
        Assert.Equal(2, (await two.StateOfAsync(visit)).Version);

        await one.HandleAsync(Invented.Message("m-2"));

        Assert.Equal(3, (await two.StateOfAsync(visit)).Version);
    }

    [Fact]
    public async Task Who_watches_a_visit_on_one_is_told_within_a_second_of_what_the_other_wrote()
    {
        var told = new TaskCompletionSource<VisitGrew>();
        otherLog.Grew += (_, grew) => told.TrySetResult(grew);
        await records.Log.AppendAsync(Invented.FirstAppend("v"));
        for (var version = 1; version < 100 && !told.Task.IsCompleted; version++)
        {
            // The line is up after a moment, and news from before it was is not told.
            await records.Log.AppendAsync(new("v", version, [Invented.Heard("38")]));
            await Task.WhenAny(told.Task, Task.Delay(100));
        }

        Assert.Equal("v", (await told.Task.WaitAsync(TimeSpan.FromSeconds(1))).VisitId);
    }

    [Fact]
    public async Task A_reply_to_deliver_is_taken_by_one_of_them()
    {
        var outboxes = new[] { new ReplyOutbox(records.Database), new ReplyOutbox(other) };
        for (var i = 0; i < 60; i++)
        {
            await outboxes[0].AddAsync("sms", $"+155501{i % 6:00}", $"m-{i:00}", CountingEngine.Saying("hello"), Invented.Morning);
        }

        var taken = await Task.WhenAll(Enumerable.Range(0, 8).Select(n => Task.Run(() => DeliverAllAsync(outboxes[n % 2]))));

        Assert.Equal(60, taken.Sum(t => t.Count));
        Assert.Equal(60, taken.SelectMany(t => t).Distinct().Count());
    }

    [Fact]
    public async Task A_message_that_one_handles_is_left_alone_by_the_other_until_that_one_is_gone()
    {
        var (inbox, others) = (new MessageInbox(records.Database), new MessageInbox(other));
        await inbox.StoreAsync(new("sms", "m1", "+15550100", "38", Invented.Morning, Invented.Morning));
        await inbox.StoreAsync(new("sms", "m2", "+15550100", "39", Invented.Morning.AddSeconds(1), Invented.Morning));
        await inbox.StoreAsync(new("sms", "m3", "+15550101", "40", Invented.Morning.AddSeconds(2), Invented.Morning));

        await using (var first = await inbox.TakeNextAsync("sms"))
        {
            await using var second = await others.TakeNextAsync("sms");
            Assert.Equal(("m1", "m3"), (first!.Message.MessageId, second!.Message.MessageId));
            Assert.Null(await others.TakeNextAsync("sms"));
        }

        await using var again = await others.TakeNextAsync("sms");
        Assert.Equal("m1", again!.Message.MessageId);
    }

    [Fact]
    public async Task A_reminder_is_given_by_one_of_them()
    {
        await records.Log.AppendAsync(Invented.FirstAppend("v"));
        await records.Log.AppendAsync(new("v", 1, [.. Enumerable.Range(0, 20).Select(i => new ReminderSet(Invented.Morning, $"{i}") { At = Invented.Morning, By = "Robin" })]));
        var stores = new[] { new ReminderStore(records.Database), new ReminderStore(other) };

        var given = await Task.WhenAll(Enumerable.Range(2, 20).SelectMany(n => stores.Select(s => Task.Run(() => s.MarkDoneAsync("v", n, Invented.Morning)))));

        Assert.Equal(20, given.Count(g => g));
    }

    [Fact]
    public async Task Both_can_start_on_an_empty_database_at_once()
    {
        var connection = await TestDatabases.NewEmptyAsync();
        var opened = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => EventLog.OpenAsync(PostgresRecords.Of(connection)))));

        Assert.Empty(await opened[0].ReadAsync("v"));
        foreach (var log in opened)
        {
            await log.DisposeAsync();
        }
    }

    private static async Task<List<string>> DeliverAllAsync(ReplyOutbox outbox)
    {
        List<string> taken = [];
        for (var idle = 0; idle < 20; idle++)
        {
            while (await outbox.TakeNextAsync("sms", Invented.Morning, DateTimeOffset.MinValue) is { } item)
            {
                taken.Add(item.MessageId);
                await outbox.HandedOverAsync(item.Id, Invented.Morning);
            }

            await Task.Delay(10);
        }

        return taken;
    }
}
