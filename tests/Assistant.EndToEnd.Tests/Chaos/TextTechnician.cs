using System.Globalization;

namespace Assistant.EndToEnd.Tests.Chaos;

/// <summary>Texts one message after the other and waits for the reply to each; now and then one asks for a reminder, which must come once.</summary>
internal sealed class TextTechnician(string number, ChaosNodes nodes, ChaosGateway gateway, ChaosLedger ledger, int seed)
{
    private const int BetweenReminders = 30;

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(4);

    private readonly Random random = new(seed);
    private int shown;
    private int set;

    public int Reminders { get; private set; }

    public int Replies { get; private set; }

    public async Task TalkAsync(CancellationToken over)
    {
        for (var turn = 0; !over.IsCancellationRequested; turn++)
        {
            var asks = turn % BetweenReminders == 0;
            await TextAsync(turn, asks ? "remind me in one minute" : string.Create(CultureInfo.InvariantCulture, $"box {45 + (turn % 7)}.{turn % 10}"));
            set += asks ? 1 : 0;
            await Task.Delay(random.Next(1100, 2500), over).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }

        await UntilAsync(() => Reminders == set, "reminder");
    }

    /// <summary>How many texts came that nobody waited for.</summary>
    public int Unasked() => gateway.Screen(number).Count - shown;

    private async Task TextAsync(int turn, string text)
    {
        var id = $"text-{number[1..]}-{turn:0000}";
        var asked = ledger.Now;
        var sent = DateTimeOffset.UtcNow.ToUnixTimeSeconds();
        await nodes.GetAsync($"text/inbound?key={ChaosGateway.Secret}&from={Uri.EscapeDataString(number)}&text={Uri.EscapeDataString(text)}&time={sent}&id={id}", random);
        var before = Replies;
        await UntilAsync(() => Replies > before, $"reply to {id}");
        ledger.Take(new("sms", number, id, null, ledger.Now, ledger.Now - asked));
    }

    private async Task UntilAsync(Func<bool> came, string what)
    {
        for (var until = ledger.Now + Patience; !came(); await Task.Delay(50))
        {
            Assert.True(ledger.Now < until, $"The {what} did not come to {number}.");
            if (gateway.Screen(number).Skip(shown).FirstOrDefault() is { } text)
            {
                shown++;
                var isReminder = text.StartsWith("Time is up", StringComparison.Ordinal);
                (Reminders, Replies) = isReminder ? (Reminders + 1, Replies) : (Reminders, Replies + 1);
            }
        }
    }
}
