using Assistant.Records.Outbox;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Outbox;

public abstract class OutboxDelivererTests(Store store) : IAsyncLifetime, IReplySender
{
    private static readonly DateTimeOffset Start = new(2026, 7, 14, 9, 0, 0, TimeSpan.Zero);

    private readonly SetClock clock = new(Start);
    private readonly Queue<Sent> answers = new();
    private readonly List<string> sent = [];
    private TemporaryRecords records = null!;
    private ReplyOutbox outbox = null!;
    private OutboxDeliverer deliverer = null!;

    public string Channel => "sms";

    public async Task InitializeAsync()
    {
        records = await TemporaryRecords.OpenAsync(store);
        outbox = new(records.Database);
        deliverer = new(outbox, this, new() { FirstWait = TimeSpan.FromSeconds(10), Attempts = 3 }, clock);
    }

    public async Task DisposeAsync() => await records.DisposeAsync();

    public Task<Sent> SendAsync(OutboxItem item, CancellationToken cancellation)
    {
        sent.Add(item.MessageId);
        return Task.FromResult(answers.TryDequeue(out var answer) ? answer : new HandedOver());
    }

    [Fact]
    public async Task What_is_due_goes_out_once()
    {
        await AddAsync("m1", "m2");

        Assert.Equal(2, await deliverer.DeliverDueAsync());
        Assert.Equal(0, await deliverer.DeliverDueAsync());
        Assert.Equal(["m1", "m2"], sent);
    }

    [Fact]
    public async Task A_failure_is_tried_again_after_waits_that_double()
    {
        answers.Enqueue(new NotSent("down"));
        answers.Enqueue(new NotSent("down"));
        await AddAsync("m1");
        await deliverer.DeliverDueAsync();
        await AtAsync(9, 1);
        await AtAsync(10, 2);
        await AtAsync(29, 2);
        await AtAsync(30, 3);
    }

    [Fact]
    public async Task A_reply_that_waits_holds_up_those_behind_it_to_the_same_phone_and_no_other()
    {
        answers.Enqueue(new NotSent("down"));
        await AddAsync("m1", "m2");
        await outbox.AddAsync("sms", "+15550199", "other", CountingEngine.Saying("hello"), Start);
        await deliverer.DeliverDueAsync();

        Assert.Equal(["m1", "other"], sent);
        await AtAsync(10, 4);
        Assert.Equal(["m1", "other", "m1", "m2"], sent);
    }

    [Fact]
    public async Task After_the_last_attempt_it_is_given_up_where_it_can_be_seen()
    {
        for (var i = 0; i < 3; i++)
        {
            answers.Enqueue(new NotSent("the gateway answered 503"));
        }

        await AddAsync("m1", "m2");
        await deliverer.DeliverDueAsync();
        await AtAsync(10, 2);
        await AtAsync(30, 4);

        var lost = Assert.Single(await outbox.LostAsync("sms"));
        Assert.Equal(("m1", "the gateway answered 503", Start.AddSeconds(30)), (lost.MessageId, lost.Trouble, lost.GaveUpAt));
        Assert.Equal("m2", sent[^1]);
    }

    [Fact]
    public async Task What_the_gateway_will_never_take_is_given_up_at_once()
    {
        answers.Enqueue(new Refused("no such number"));
        await AddAsync("m1");
        await deliverer.DeliverDueAsync();

        Assert.Single(await outbox.LostAsync("sms"));
    }

    [Fact]
    public async Task Killed_while_it_was_sent_it_waits_for_the_report_and_is_not_sent_again()
    {
        answers.Enqueue(new InDoubt("killed"));
        await AddAsync("m1");
        await deliverer.DeliverDueAsync();
        await AtAsync(19, 1);
        await deliverer.ReportAsync(1, 1, DeliveryReport.OnItsWay);
        await AtAsync(3600, 1);
    }

    [Fact]
    public async Task Killed_before_it_was_sent_it_is_sent_when_no_report_comes()
    {
        answers.Enqueue(new InDoubt("killed"));
        await AddAsync("m1");
        await deliverer.DeliverDueAsync();
        await AtAsync(20, 2);
    }

    [Fact]
    public async Task A_failure_the_network_reports_is_tried_again_once_however_often_it_is_reported()
    {
        await AddAsync("m1");
        await deliverer.DeliverDueAsync();
        await deliverer.ReportAsync(1, 1, DeliveryReport.Failed);
        await AtAsync(10, 2);
        await deliverer.ReportAsync(1, 1, DeliveryReport.Failed);
        await AtAsync(3600, 2);
    }

    [Fact]
    public async Task What_arrived_stays_so_whatever_is_reported_later()
    {
        await AddAsync("m1");
        await deliverer.DeliverDueAsync();
        await deliverer.ReportAsync(1, 1, DeliveryReport.Arrived);
        await deliverer.ReportAsync(1, 1, DeliveryReport.Failed);
        await AtAsync(3600, 1);
        Assert.Empty(await outbox.LostAsync("sms"));
    }

    private async Task AddAsync(params string[] ids)
    {
        foreach (var id in ids)
        {
            await outbox.AddAsync("sms", "+15550100", id, CountingEngine.Saying(id), Start);
        }
    }

    private async Task AtAsync(int seconds, int attempts)
    {
        clock.Now = Start.AddSeconds(seconds);
        await deliverer.DeliverDueAsync();
        Assert.Equal(attempts, sent.Count);
    }

    private sealed class SetClock(DateTimeOffset now) : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = now;

        public override DateTimeOffset GetUtcNow() => Now;
    }
}

public sealed class OutboxDelivererTestsOnSqlite() : OutboxDelivererTests(Store.Sqlite);

public sealed class OutboxDelivererTestsOnPostgres() : OutboxDelivererTests(Store.Postgres);
