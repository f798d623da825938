using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Records.Outbox;
using Assistant.Records.Reminders;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Reminders;

public abstract class CheckInTests(Store store)
{
    private static readonly DateTimeOffset Ask = Invented.Morning.AddMinutes(20);
    private static readonly DateTimeOffset Alert = Invented.Morning.AddMinutes(25);
    private static readonly Reply Words = new(new("ALERT", "ALERT"), [], [], null, [], null, [], null, []);

    [Fact]
    public async Task A_person_who_works_alone_is_asked_and_without_a_word_the_contact_is_alerted_once()
    {
        await using var records = await OpenAsync();
        var reminders = new ReminderStore(records.Database);

        Assert.Empty(await reminders.DueAsync(Ask.AddSeconds(-1)));
        var asked = Assert.Single(await reminders.DueAsync(Ask));
        Assert.False(asked.IsAlert(Ask));
        Assert.True(await reminders.MarkAskedAsync("v", asked.CheckIn!));
        Assert.False(await reminders.MarkAskedAsync("v", asked.CheckIn!));
        Assert.Empty(await reminders.DueAsync(Alert.AddSeconds(-1)));

        var due = Assert.Single(await reminders.DueAsync(Alert));
        Assert.True(due.IsAlert(Alert));
        await new ContactAlert(records.Database).SendAsync(due, Words, Alert);
        await new ContactAlert(records.Database).SendAsync(due, Words, Alert);
        var outbox = new ReplyOutbox(records.Database);
        Assert.Equal(("c-1", "ALERT"), (Assert.Single(await outbox.DueAsync("chat", Alert)).Conversation, Assert.Single(await outbox.DueAsync("chat", Alert)).Reply.Say.Full));
        Assert.Equal("Ben", Assert.Single(await outbox.DueAsync(ContactAlert.Channel, Alert)).Conversation);
    }

    [Fact]
    public async Task Two_phones_of_one_channel_are_both_alerted()
    {
        await using var records = await OpenAsync();
        var due = Assert.Single(await new ReminderStore(records.Database).DueAsync(Alert)) with { Conversations = [new("sms", "+15550101"), new("sms", "+15550102")] };
        await new ContactAlert(records.Database).SendAsync(due, Words, Alert);
        await new ContactAlert(records.Database).SendAsync(due, Words, Alert);

        Assert.Equal(["+15550101", "+15550102"], (await new ReplyOutbox(records.Database).DueAsync("sms", Alert)).Select(a => a.Conversation));
    }

    [Fact]
    public async Task A_phone_that_never_came_to_be_asked_is_alerted_for_all_the_same()
    {
        await using var records = await OpenAsync();

        Assert.True(Assert.Single(await new ReminderStore(records.Database).DueAsync(Alert)).IsAlert(Alert));
    }

    [Fact]
    public async Task The_next_question_replaces_the_one_before_and_the_end_takes_both_away()
    {
        await using var records = await OpenAsync();
        var reminders = new ReminderStore(records.Database);
        await records.Log.AppendAsync(new("v", 2, [Expected(Ask.AddMinutes(20), replaces: 2)]));

        Assert.Empty(await reminders.DueAsync(Alert));
        Assert.Equal(3, Assert.Single(await reminders.DueAsync(Ask.AddMinutes(20))).EventNumber);

        await records.Log.AppendAsync(new("v", 3, [new CheckInEnded(3) { At = Ask, By = "Robin" }]));
        Assert.Empty(await reminders.DueAsync(Ask.AddDays(1)));
    }

    private async Task<TemporaryRecords> OpenAsync()
    {
        var records = await TemporaryRecords.OpenAsync(store);
        await records.Log.AppendAsync(Invented.FirstAppend("v", "c-1"));
        await records.Log.AppendAsync(new("v", 1, [Expected(Ask, replaces: 0)]));
        return records;
    }

    private static CheckInExpected Expected(DateTimeOffset ask, int replaces) =>
        new(TimeSpan.FromMinutes(20), ask, ask.AddMinutes(5), "Ben", replaces) { At = Invented.Morning, By = "Robin" };
}

public sealed class CheckInTestsOnSqlite() : CheckInTests(Store.Sqlite);

public sealed class CheckInTestsOnPostgres() : CheckInTests(Store.Postgres);
