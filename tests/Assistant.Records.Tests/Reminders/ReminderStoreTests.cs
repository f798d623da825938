using Assistant.Dialogue.Visits;
using Assistant.Records.Reminders;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Reminders;

public abstract class ReminderStoreTests(Store store)
{
    private static readonly ReminderSet Weigh = new(Invented.Morning.AddMinutes(20), "read the head again") { At = Invented.Morning, By = "Robin" };

    [Fact]
    public async Task A_reminder_is_due_from_its_time_on_until_it_was_given_once()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        await records.Log.AppendAsync(Invented.FirstAppend("v", "c-1"));
        await records.Log.AppendAsync(new("v", 1, [Weigh]));
        var reminders = new ReminderStore(records.Database);

        Assert.Empty(await reminders.DueAsync(Invented.Morning.AddMinutes(19)));
        var due = Assert.Single(await reminders.DueAsync(Invented.Morning.AddMinutes(20)));
        Assert.Equal(("v", 2, "read the head again"), (due.VisitId, due.EventNumber, due.About));
        Assert.Equal(new ConversationAddress("chat", "c-1"), Assert.Single(due.Conversations));
        Assert.True(await reminders.MarkDoneAsync("v", 2, Invented.Morning.AddMinutes(20)));
        Assert.False(await reminders.MarkDoneAsync("v", 2, Invented.Morning.AddMinutes(20)));
        Assert.Empty(await reminders.DueAsync(Invented.Morning.AddDays(1)));
    }

    [Fact]
    public async Task What_was_given_to_an_asking_is_found_by_its_name_and_by_no_other()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        await records.Log.AppendAsync(Invented.FirstAppend("v"));
        await records.Log.AppendAsync(new("v", 1, [Weigh]));
        var reminders = new ReminderStore(records.Database);

        Assert.Empty(await reminders.GivenAsync("v", "asking-1"));
        await reminders.MarkDoneAsync("v", 2, Invented.Morning.AddMinutes(20), "asking-1");

        var given = Assert.Single(await reminders.GivenAsync("v", "asking-1"));
        Assert.Equal((2, "read the head again", true), (given.EventNumber, given.About, given.IsDone));
        Assert.Empty(await reminders.GivenAsync("v", "asking-2"));
    }

    [Fact]
    public void A_reminder_goes_first_to_the_channel_its_person_was_heard_on_last()
    {
        MessageHeard Heard(string by, string channel) => new("m", channel, "ok") { At = Invented.Morning, By = by };
        var visit = VisitState.Fold([Heard("Robin", "sms"), Heard("Robin", "page"), Heard("Kim", "sms")]);
        var due = new DueReminder("v", 2, Invented.Morning, "Robin", "read the head again", null, [new("sms", "+1"), new("page", "v")]);

        Assert.True(due.IsLeftToAnother(visit, "sms", Invented.Morning.AddSeconds(119)));
        Assert.False(due.IsLeftToAnother(visit, "page", Invented.Morning));
        Assert.False(due.IsLeftToAnother(visit, "sms", Invented.Morning.AddMinutes(2)));
        Assert.False((due with { Conversations = [new("sms", "+1")] }).IsLeftToAnother(visit, "sms", Invented.Morning));
        Assert.False((due with { By = "Ben" }).IsLeftToAnother(visit, "sms", Invented.Morning));
    }

    [Fact]
    public async Task A_reminder_that_was_withdrawn_never_falls_due()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        await records.Log.AppendAsync(Invented.FirstAppend("v"));
        await records.Log.AppendAsync(new("v", 1, [Weigh]));
        await records.Log.AppendAsync(new("v", 2, [new EventWithdrawn(2) { At = Invented.Morning, By = "Robin" }]));

        Assert.Empty(await new ReminderStore(records.Database).DueAsync(Invented.Morning.AddDays(1)));
    }
}

public sealed class ReminderStoreTestsOnSqlite() : ReminderStoreTests(Store.Sqlite);

public sealed class ReminderStoreTestsOnPostgres() : ReminderStoreTests(Store.Postgres);
