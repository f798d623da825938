using Assistant.Records.Conversations;
using Assistant.Records.Outbox;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Outbox;

public abstract class ReplyOutboxTests(Store store)
{
    [Fact]
    public async Task A_reply_waits_until_it_is_delivered_and_a_repeated_message_adds_none()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        var outbox = new ReplyOutbox(records.Database);
        await service.HandleAsync(Invented.Message("m-1"), outbox: true);
        await service.HandleAsync(Invented.Message("m-1"), outbox: true);

        var waiting = Assert.Single(await outbox.DueAsync("chat", Invented.Morning));
        Assert.Equal(("c-1", "m-1", "38 after 1", 0), (waiting.Conversation, waiting.MessageId, waiting.Reply.Say.Full, waiting.Attempts));
        await outbox.FailedAsync(waiting.Id, Invented.Morning.AddMinutes(1));
        Assert.Empty(await outbox.DueAsync("chat", Invented.Morning));
        Assert.Equal(1, Assert.Single(await outbox.DueAsync("chat", Invented.Morning.AddMinutes(1))).Attempts);
        await outbox.DeliveredAsync(waiting.Id, Invented.Morning.AddMinutes(1));
        Assert.Empty(await outbox.DueAsync("chat", Invented.Morning.AddDays(1)));
    }

    [Fact]
    public async Task A_reply_put_in_twice_under_one_id_waits_once()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        var outbox = new ReplyOutbox(records.Database);

        await outbox.AddAsync("sms", "+15550100", "reminder v 2", CountingEngine.Saying("Read the head again."), Invented.Morning);
        await outbox.AddAsync("sms", "+15550100", "reminder v 2", CountingEngine.Saying("Read the head again."), Invented.Morning);

        Assert.Single(await outbox.DueAsync("sms", Invented.Morning));
    }
}

public sealed class ReplyOutboxTestsOnSqlite() : ReplyOutboxTests(Store.Sqlite);

public sealed class ReplyOutboxTestsOnPostgres() : ReplyOutboxTests(Store.Postgres);
