using Assistant.Dialogue.Visits;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Conversations;

public abstract class ConversationServiceTests(Store store)
{
    [Fact]
    public async Task A_first_message_opens_a_visit_and_is_taken_on_it()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());

        var reply = await service.HandleAsync(Invented.Message("m-1", "warm box"));

        Assert.Equal("warm box after 1", reply.Say.Full);
        var visit = await records.Log.VisitOfAsync("chat", "c-1");
        var events = await records.Log.ReadAsync(visit!);
        Assert.IsType<VisitOpened>(events[0]);
        Assert.Equal("warm box", Assert.IsType<MessageHeard>(events[1]).Text);
        Assert.Equal([1, 2], events.Select(e => e.Number));
    }

    [Fact]
    public async Task One_message_id_under_16_callers_at_once_is_applied_once_and_all_get_the_same_reply()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());

        var replies = await Task.WhenAll(Enumerable.Range(0, 16).Select(_ => Task.Run(() => service.HandleAsync(Invented.Message("m-1")))));

        Assert.Equal(["38 after 1"], replies.Select(r => r.Say.Full).Distinct());
        Assert.Equal(2, (await records.Log.ReadAsync((await records.Log.VisitOfAsync("chat", "c-1"))!)).Length);
    }

    [Fact]
    public async Task A_message_repeated_later_gets_the_reply_of_then()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        await service.HandleAsync(Invented.Message("m-1"));
        await service.HandleAsync(Invented.Message("m-2"));

        var again = await service.HandleAsync(Invented.Message("m-1"));

        Assert.Equal("38 after 1", again.Say.Full);
        Assert.Equal("38 after 1", (await records.Log.ReplyToAsync("chat", "m-1"))!.Say.Full);
    }

    [Fact]
    public async Task Two_services_on_one_file_see_each_others_events()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        await using var otherLog = await EventLog.OpenAsync(records.Database);
        using var one = new ConversationService(records.Log, new CountingEngine());
        using var other = new ConversationService(otherLog, new CountingEngine());
        await one.HandleAsync(Invented.Message("m-0"));

        var work = Enumerable.Range(1, 40).Select(i => Task.Run(() => (i % 2 == 0 ? one : other).HandleAsync(Invented.Message($"m-{i}"))));
        var replies = await Task.WhenAll(work);

        var expected = Enumerable.Range(2, 40).Select(version => $"38 after {version}");
        Assert.Equal(expected.Order(), replies.Select(r => r.Say.Full).Order());
    }

    [Fact]
    public async Task A_state_that_is_no_longer_kept_is_folded_again_from_the_log()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine(), new() { StatesKept = 1 });
        for (var i = 0; i < 3; i++)
        {
            await service.HandleAsync(Invented.Message($"a-{i}", conversation: "a"));
            await service.HandleAsync(Invented.Message($"b-{i}", conversation: "b"));
        }

        Assert.Equal("38 after 4", (await service.HandleAsync(Invented.Message("a-3", conversation: "a"))).Say.Full);
    }

    [Fact]
    public async Task Opening_a_visit_moves_the_conversation_to_it()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        await service.HandleAsync(Invented.Message("m-1"));

        var opened = await service.OpenVisitAsync(new("chat", "c-1", "Invented Bakery", null, default, "Robin", Invented.Morning));

        Assert.Equal("What does the display read?", opened.Reply.Say.Full);
        Assert.Equal(opened.VisitId, await records.Log.VisitOfAsync("chat", "c-1"));
    }

    [Fact]
    public async Task An_asset_that_is_not_on_record_is_refused_in_one_line()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());

        var refused = await Assert.ThrowsAsync<RecordsException>(() =>
            service.OpenVisitAsync(new("chat", "c-1", null, "no-such-unit", default, "Robin", Invented.Morning)));

        Assert.Equal(RecordsFault.Refused, refused.Fault);
        Assert.Equal("There is no asset no-such-unit on record. Name one that is, or leave it out.", refused.Message);
    }

    [Fact]
    public async Task A_closed_visit_is_spoken_of_for_two_hours_and_then_a_new_one_opens()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        await service.HandleAsync(Invented.Message("m-1"));
        var first = (await records.Log.VisitOfAsync("chat", "c-1"))!;
        await records.Log.AppendAsync(new(first, 2, [new VisitClosed("repaired") { At = Invented.Morning, By = "Robin" }]));

        await service.HandleAsync(Invented.Message("m-2") with { At = Invented.Morning.AddHours(2) });
        Assert.Equal(first, await records.Log.VisitOfAsync("chat", "c-1"));
        var reply = await service.HandleAsync(Invented.Message("m-3") with { At = Invented.Morning.AddHours(2.1) });

        Assert.Equal("38 after 1", reply.Say.Full);
        Assert.NotEqual(first, await records.Log.VisitOfAsync("chat", "c-1"));
    }

    [Fact]
    public async Task A_closing_that_was_taken_back_leaves_the_visit_open()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        await service.HandleAsync(Invented.Message("m-1"));
        var visit = (await records.Log.VisitOfAsync("chat", "c-1"))!;
        await records.Log.AppendAsync(new(visit, 2, [new VisitClosed("repaired") { At = Invented.Morning, By = "Robin" }]));
        await records.Log.AppendAsync(new(visit, 3, [new EventWithdrawn(3) { At = Invented.Morning, By = "Robin" }]));

        var reply = await service.HandleAsync(Invented.Message("m-2") with { At = Invented.Morning.AddDays(1) });

        Assert.Equal("38 after 4", reply.Say.Full);
    }
}

public sealed class ConversationServiceTestsOnSqlite() : ConversationServiceTests(Store.Sqlite);

public sealed class ConversationServiceTestsOnPostgres() : ConversationServiceTests(Store.Postgres);
