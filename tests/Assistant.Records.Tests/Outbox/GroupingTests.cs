using Assistant.Dialogue.Replies;
using Assistant.Records.Outbox;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Outbox;

public abstract class GroupingTests(Store store)
{
    private static readonly Grouping Rooms = new(c => c == "room", TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(3));

    [Fact]
    public async Task What_a_room_is_answered_within_moments_goes_out_as_one_and_in_order()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        var outbox = new ReplyOutbox(records.Database);
        await AddAsync(outbox, "room", "a", 0);
        await AddAsync(outbox, "room", "b", 0.6);

        Assert.Null(await TakeAsync(outbox, 1.2));
        var item = (await TakeAsync(outbox, 1.6))!;

        Assert.Equal("a\nb", item.Reply.Say.Full);
        await outbox.HandedOverAsync(item.Id, At(1.7));
        Assert.Null(await TakeAsync(outbox, 10));
        Assert.Equal(2, (await outbox.SeenAsync("chat", "room", At(5)))!.Version);
    }

    [Fact]
    public async Task A_room_in_which_people_do_not_stop_is_answered_all_the_same()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        var outbox = new ReplyOutbox(records.Database);
        for (var i = 0; i < 6; i++)
        {
            await AddAsync(outbox, "room", $"r{i}", i * 0.6);
        }

        Assert.Null(await TakeAsync(outbox, 2.9));
        Assert.Equal("r0\nr1\nr2\nr3\nr4\nr5", (await TakeAsync(outbox, 3.0))!.Reply.Say.Full);
    }

    [Fact]
    public async Task One_person_alone_is_answered_at_once_each_time()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        var outbox = new ReplyOutbox(records.Database);
        await AddAsync(outbox, "kim", "a", 0);
        await AddAsync(outbox, "kim", "b", 0);

        Assert.Equal("a", (await TakeAsync(outbox, 0))!.Reply.Say.Full);
    }

    [Fact]
    public async Task What_was_tried_once_is_tried_again_as_it_was()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        var outbox = new ReplyOutbox(records.Database);
        await AddAsync(outbox, "room", "a", 0);
        var first = (await TakeAsync(outbox, 1))!;
        await AddAsync(outbox, "room", "b", 1);
        await outbox.TryAgainAsync(first.Id, At(2), "no line");

        var again = (await TakeAsync(outbox, 2))!;

        Assert.Equal((first.Id, "a"), (again.Id, again.Reply.Say.Full));
    }

    private static DateTimeOffset At(double seconds) => Invented.Morning.AddSeconds(seconds);

    private static Task<OutboxItem?> TakeAsync(ReplyOutbox outbox, double seconds) => outbox.TakeNextAsync("chat", At(seconds), At(seconds - 20), Rooms);

    private static Task AddAsync(ReplyOutbox outbox, string conversation, string text, double seconds) =>
        outbox.AddAsync(new("chat", conversation, text, CountingEngine.Saying(text), At(seconds), new("v-1", text == "b" ? 2 : 1)));
}

public sealed class GroupingTestsOnSqlite() : GroupingTests(Store.Sqlite);

public sealed class GroupingTestsOnPostgres() : GroupingTests(Store.Postgres);

public sealed class ReplyGroupTests
{
    [Fact]
    public void No_caution_is_lost_none_is_said_twice_and_the_last_question_is_asked()
    {
        var caution = new SpokenCaution("electrical", new("Live parts.", "Live parts."));
        var ladder = new SpokenCaution("ladder", new("Ladder.", "Ladder."));

        var one = ReplyGroup.Of([Reply("22 psig.", "Head?", caution), Reply("Flashing.", "Ambient?", caution, ladder), Reply("Welcome.", null)]);

        Assert.Equal("22 psig.\nFlashing.\nWelcome.", one.Say.Full);
        Assert.Equal(["electrical", "ladder"], one.Cautions.Select(c => c.Code));
        Assert.Equal("Ambient?", one.Ask!.Full);
    }

    private static Reply Reply(string say, string? ask, params SpokenCaution[] cautions) =>
        new(new(say, say), [], [.. cautions], ask is null ? null : new(ask, ask), [], null, [], null, []);
}
