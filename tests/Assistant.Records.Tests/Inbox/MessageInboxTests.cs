using Assistant.Records.Inbox;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Inbox;

public abstract class MessageInboxTests(Store store) : IAsyncLifetime
{
    private static readonly DateTimeOffset Morning = new(2026, 7, 14, 9, 0, 0, TimeSpan.Zero);

    private TemporaryRecords records = null!;
    private MessageInbox inbox = null!;

    public async Task InitializeAsync()
    {
        records = await TemporaryRecords.OpenAsync(store);
        inbox = new(records.Database);
    }

    public async Task DisposeAsync() => await records.DisposeAsync();

    [Fact]
    public async Task What_was_sent_first_is_handled_first_whenever_it_came()
    {
        await inbox.StoreAsync(Message("later", 60, 61));
        await inbox.StoreAsync(Message("earlier", 0, 90));

        Assert.Equal("earlier", await HandleAsync());
        Assert.Equal("later", await HandleAsync());
        Assert.Null(await HandleAsync());
    }

    [Fact]
    public async Task The_same_id_is_stored_once_even_after_it_was_handled()
    {
        Assert.True(await inbox.StoreAsync(Message("m1", 0, 1)));
        await HandleAsync();

        Assert.False(await inbox.StoreAsync(Message("m1", 0, 3)));
        Assert.Null(await HandleAsync());
    }

    [Fact]
    public async Task Handled_words_are_gone_from_the_inbox()
    {
        await inbox.StoreAsync(Message("m1", 0, 1));
        await HandleAsync();

        Assert.Equal("", records.Scalar<string>("SELECT text FROM inbox"));
    }

    [Fact]
    public async Task Handled_messages_are_forgotten_after_their_time_and_waiting_ones_never()
    {
        await inbox.StoreAsync(Message("handled", 0, 1));
        await inbox.StoreAsync(Message("waiting", 5, 6));
        await HandleAsync();

        Assert.Equal(1, await inbox.ForgetAsync(Morning.AddDays(1)));
        Assert.Equal("waiting", await HandleAsync());
    }

    [Fact]
    public async Task A_message_that_was_taken_and_not_handled_waits_again()
    {
        await inbox.StoreAsync(Message("m1", 0, 1));
        await using (var taken = await inbox.TakeNextAsync("sms"))
        {
            Assert.Equal("words of m1", taken!.Message.Text);
        }

        Assert.Equal("m1", await HandleAsync());
    }

    private async Task<string?> HandleAsync()
    {
        await using var taken = await inbox.TakeNextAsync("sms");
        await (taken?.HandledAsync(Morning.AddMinutes(2)) ?? Task.CompletedTask);
        return taken?.Message.MessageId;
    }

    private static ReceivedMessage Message(string id, int sent, int received) =>
        new("sms", id, "+15550100", $"words of {id}", Morning.AddSeconds(sent), Morning.AddSeconds(received));
}

public sealed class MessageInboxTestsOnSqlite() : MessageInboxTests(Store.Sqlite);

public sealed class MessageInboxTestsOnPostgres() : MessageInboxTests(Store.Postgres);
