using Assistant.Dialogue.Visits;
using Assistant.Records.Chain;
using Assistant.Records.Conversations;
using Assistant.Records.Erasure;
using Assistant.Records.Log;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Erasure;

public abstract class PersonEraserTests(Store store)
{
    [Fact]
    public async Task The_chain_holds_and_the_others_words_stay()
    {
        await using var records = await ConversationOfTwoAsync();

        var erased = await new PersonEraser(records.Log).EraseAsync("Robin", "office", Invented.Morning.AddDays(90));

        var events = await records.Log.ReadAsync((await records.Log.VisitOfAsync("chat", "+15550100"))!);
        Assert.Equal(2, erased);
        Assert.Equal(["(erased)", "(erased)", "Kim", "office"], events.Select(e => e.By));
        Assert.Equal(["", "glass is clear"], events.OfType<MessageHeard>().Select(m => m.Text));
        Assert.True((await new ChainVerifier(records.Database).VerifyAsync()).Holds);
    }

    [Fact]
    public async Task Nothing_the_person_said_is_left_in_the_database()
    {
        await using var records = await ConversationOfTwoAsync();
        Assert.True(records.Holds("Robin") && records.Holds("my number is private"));

        await new PersonEraser(records.Log).EraseAsync("Robin", "office", Invented.Morning);

        Assert.False(records.Holds("Robin"));
        Assert.False(records.Holds("my number is private"));
        Assert.True(records.Holds("glass is clear"));
    }

    [Fact]
    public async Task The_address_of_one_who_was_alone_on_the_visit_goes_too()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        await service.HandleAsync(Invented.Message("m-1", conversation: "+15550100"));

        await new PersonEraser(records.Log).EraseAsync("Robin", "office", Invented.Morning);

        Assert.False(records.Holds("+15550100"));
        Assert.True((await new ChainVerifier(records.Database).VerifyAsync()).Holds);
    }

    [Theory]
    [InlineData("Robin", null)]
    [InlineData("robin", null)]
    [InlineData("Robin", "Kim")]
    [InlineData("Lee", "Robin")]
    public async Task To_whom_and_from_whom_a_visit_was_handed_over_is_a_name_too(string to, string? from)
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        await service.HandleAsync(Invented.Message("m-1", person: "Kim"));
        var visit = (await records.Log.VisitOfAsync("chat", Invented.Message("m-1").Conversation))!;
        var handed = new HandedOver(to) { At = Invented.Morning, By = "Kim", From = from, ToId = "person-7" };
        Assert.IsType<Appended>(await records.Log.AppendAsync(new(visit, (await records.Log.ReadAsync(visit)).Length, [handed])));

        var erased = await new PersonEraser(records.Log).EraseAsync("Robin", "office", Invented.Morning);

        var events = await records.Log.ReadAsync(visit);
        Assert.Equal(1, erased);
        Assert.Equal(("", "", ""), events.OfType<HandedOver>().Select(h => (h.To, h.From, h.ToId)).Single());
        Assert.Equal("Kim", events.OfType<MessageHeard>().Single().By);
        Assert.False(records.Holds("Robin") || records.Holds("robin") || records.Holds("person-7"));
        Assert.True((await new ChainVerifier(records.Database).VerifyAsync()).Holds);
        Assert.Equal(0, await new PersonEraser(records.Log).EraseAsync("Robin", "office", Invented.Morning));
    }

    [Fact]
    public async Task A_handover_between_others_keeps_its_names()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        await service.HandleAsync(Invented.Message("m-1", person: "Kim"));
        var visit = (await records.Log.VisitOfAsync("chat", Invented.Message("m-1").Conversation))!;
        await records.Log.AppendAsync(new(visit, (await records.Log.ReadAsync(visit)).Length, [new HandedOver("Lee") { At = Invented.Morning, By = "Kim", From = "Kim" }]));

        await new PersonEraser(records.Log).EraseAsync("Robin", "office", Invented.Morning);

        Assert.Equal(("Lee", "Kim"), (await records.Log.ReadAsync(visit)).OfType<HandedOver>().Select(h => (h.To, h.From)).Single());
    }

    [Fact]
    public async Task Whom_a_check_in_was_to_alert_goes_once_it_is_settled_and_stays_while_somebody_relies_on_it()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        await service.HandleAsync(Invented.Message("m-1", person: "Kim"));
        var visit = (await records.Log.VisitOfAsync("chat", Invented.Message("m-1").Conversation))!;
        var every = TimeSpan.FromMinutes(20);
        var asked = new CheckInExpected(every, Invented.Morning + every, Invented.Morning + every + every, "Robin", 0) { At = Invented.Morning, By = "Kim" };
        var length = (await records.Log.ReadAsync(visit)).Length;
        await records.Log.AppendAsync(new(visit, length, [asked]));

        var running = await new PersonEraser(records.Log).EraseAsync("Robin", "office", Invented.Morning);
        await records.Log.AppendAsync(new(visit, length + 1, [new CheckInEnded(length + 1) { At = Invented.Morning, By = "Kim" }]));
        var settled = await new PersonEraser(records.Log).EraseAsync("Robin", "office", Invented.Morning);

        Assert.Equal((0, 1), (running, settled));
        Assert.False(records.Holds("Robin"));
        Assert.True((await new ChainVerifier(records.Database).VerifyAsync()).Holds);
    }

    [Fact]
    public async Task An_erasure_does_not_cover_other_gaps()
    {
        await using var records = await ConversationOfTwoAsync();
        await new PersonEraser(records.Log).EraseAsync("Robin", "office", Invented.Morning);
        records.Tamper("UPDATE events SET personal = NULL, salt = NULL WHERE number = 3");

        Assert.Equal(3, (await new ChainVerifier(records.Database).VerifyAsync()).Broken!.Number);
    }

    [Fact]
    public async Task A_visit_in_use_goes_on_after_the_erasure()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        await service.HandleAsync(Invented.Message("m-1", person: "Kim"));
        await service.HandleAsync(Invented.Message("m-2", person: "Robin"));
        await new PersonEraser(records.Log).EraseAsync("Robin", "office", Invented.Morning);

        Assert.Equal("38 after 4", (await service.HandleAsync(Invented.Message("m-3", person: "Kim"))).Say.Full);
    }

    private async Task<TemporaryRecords> ConversationOfTwoAsync()
    {
        var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        await service.HandleAsync(Invented.Message("m-1", "my number is private", "+15550100"), outbox: true);
        await service.HandleAsync(Invented.Message("m-2", "glass is clear", "+15550100", person: "Kim"));
        return records;
    }
}

public sealed class PersonEraserTestsOnSqlite() : PersonEraserTests(Store.Sqlite);

public sealed class PersonEraserTestsOnPostgres() : PersonEraserTests(Store.Postgres);
