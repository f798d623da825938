using Assistant.Channels.Text;
using Assistant.Records.Outbox;

namespace Assistant.Channels.Tests.Text;

/// <summary>One call over one network, event by event on a clock of its own. Without a seed everything arrives at once and in order.</summary>
internal sealed class TextSchedule : IReplySender
{
    private static readonly DeliveryOptions Patience = new() { FirstWait = TimeSpan.FromSeconds(2), LongestWait = TimeSpan.FromSeconds(20), Doubt = TimeSpan.FromSeconds(30) };

    private readonly TextScene scene;
    private readonly string phone;
    private readonly Random? chance;
    private readonly PriorityQueue<Func<Task>, (DateTimeOffset At, int Order)> ahead = new();
    private readonly List<string> screen = [];
    private OutboxDeliverer? program;
    private int order;
    private int burst = -1;
    private List<string> awaited = [];
    private int kills;
    private int repeats;
    private int overtaken;
    private int refusals;

    public TextSchedule(TextScene scene, string phone, int? seed)
    {
        (this.scene, this.phone) = (scene, phone);
        chance = seed is { } fixedSeed ? new(fixedSeed) : null;
    }

    public string Channel => TextSettings.Channel;

    public async Task<ScheduleOutcome> RunAsync()
    {
        Start();
        NextBurst();
        for (var steps = 0; ahead.TryDequeue(out var happens, out var when) && steps < 20_000; steps++)
        {
            scene.Clock.Set(when.At > scene.Clock.Now ? when.At : scene.Clock.Now);
            try
            {
                await happens();
                await WorkAsync();
            }
            catch (PowerCut)
            {
                Kill();
            }
        }

        var ids = WarmBoxCall.Bursts.SelectMany((texts, b) => texts.Select((_, i) => Id(b, i))).ToList();
        return new(
            WarmBoxCall.Outcome(await scene.StateAsync(phone)),
            [.. ids.Except(screen)],
            [.. screen.GroupBy(id => id).Where(g => g.Count() > 1).Select(g => g.Key)],
            new(kills, repeats, overtaken, refusals));
    }

    /// <summary>The gateway: it may refuse, take the reply and not get to say so, or take it and be cut off together with the program.</summary>
    public Task<Sent> SendAsync(OutboxItem item, CancellationToken cancellation)
    {
        var luck = chance?.NextDouble() ?? 1;
        if (luck < 0.1)
        {
            refusals++;
            return Task.FromResult<Sent>(new NotSent("the gateway is down"));
        }

        screen.Add(item.MessageId);
        for (var report = 0; report < 2; report++)
        {
            Report(item, Seconds(0.1, 6));
        }

        return luck switch
        {
            < 0.15 => throw new PowerCut(),
            < 0.2 => Task.FromResult<Sent>(new InDoubt("the line broke")),
            _ => Task.FromResult<Sent>(new HandedOver()),
        };
    }

    private static string Id(string phone, int burst, int text) => $"{phone}-{burst}-{text}";

    private string Id(int number, int text) => Id(phone, number, text);

    private void NextBurst()
    {
        burst++;
        var sent = scene.Clock.Now + TimeSpan.FromSeconds(10);
        sent = new(sent.Year, sent.Month, sent.Day, sent.Hour, sent.Minute, sent.Second, TimeSpan.Zero);
        var texts = WarmBoxCall.Bursts[burst];
        awaited = [.. texts.Select((_, i) => Id(burst, i))];
        for (var i = 0; i < texts.Length; i++)
        {
            var at = sent + (i * TimeSpan.FromSeconds(3));
            var (id, text) = (Id(burst, i), texts[i]);
            var isLate = chance is not null && i + 1 < texts.Length && chance.NextDouble() < 0.2;
            overtaken += isLate ? 1 : 0;
            var arrives = at + (isLate ? TimeSpan.FromSeconds(4) + Seconds(0, 20) : Seconds(0.1, 2));
            Plan(arrives, () => ArriveAsync(id, text, at));
            if (chance is not null)
            {
                Plan(arrives + Seconds(0, 60), () => ArriveAsync(id, text, at));
            }
        }

        if (chance is not null && chance.NextDouble() < 0.3)
        {
            Plan(sent + Seconds(0, 12), () => throw new PowerCut());
        }
    }

    // The program stores it, or the gateway brings it again.
    private async Task ArriveAsync(string id, string text, DateTimeOffset sent)
    {
        if (program is null)
        {
            repeats++;
            Plan(scene.Clock.Now + TimeSpan.FromSeconds(2), () => ArriveAsync(id, text, sent));
            return;
        }

        await scene.Desk.ReceiveAsync(id, phone, text, sent);
    }

    private void Report(OutboxItem item, TimeSpan after) => Plan(scene.Clock.Now + after, async () =>
    {
        if (program is null)
        {
            Report(item, TimeSpan.FromSeconds(2));
        }
        else
        {
            await program.ReportAsync(item.Id, item.Attempts + 1, DeliveryReport.OnItsWay);
        }
    });

    private async Task WorkAsync()
    {
        if (program is not null)
        {
            await scene.Desk.HandleAllAsync();
            await program.DeliverDueAsync();
            if (awaited.Count > 0 && !awaited.All(screen.Contains))
            {
                // It looks again on its own, as the running program does.
                Plan(scene.Clock.Now + TimeSpan.FromSeconds(3), () => Task.CompletedTask, onlyIfIdle: true);
            }
        }

        if (awaited.Count > 0 && awaited.All(screen.Contains) && program is not null)
        {
            awaited = [];
            if (burst + 1 < WarmBoxCall.Bursts.Length)
            {
                NextBurst();
            }
        }
    }

    private void Kill()
    {
        kills++;
        program = null;
        Plan(scene.Clock.Now + Seconds(1, 10), () =>
        {
            Start();
            return Task.CompletedTask;
        });
    }

    private void Start()
    {
        scene.Restart();
        program = new(scene.Outbox, this, Patience, scene.Clock);
    }

    private void Plan(DateTimeOffset at, Func<Task> happens, bool onlyIfIdle = false)
    {
        if (!onlyIfIdle || ahead.Count == 0)
        {
            ahead.Enqueue(happens, (at, order++));
        }
    }

    private TimeSpan Seconds(double least, double most) => TimeSpan.FromSeconds(least + ((chance?.NextDouble() ?? 0) * (most - least)));

    /// <summary>Everything in memory is gone at once.</summary>
    private sealed class PowerCut : Exception;
}
