using System.Globalization;
using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Page;

namespace Assistant.EndToEnd.Tests.Chaos;

/// <summary>Talks through one visit after the other on the page; each begins with asking for a reminder, which must come once.</summary>
internal sealed class PageTechnician(int number, ChaosNodes nodes, ChaosLedger ledger, int seed)
{
    private const int TurnsOfAVisit = 40;

    private readonly Random random = new(seed);

    public int Reminders { get; private set; }

    public async Task TalkAsync(CancellationToken over)
    {
        for (var call = 0; !over.IsCancellationRequested; call++)
        {
            var visit = $"chaos-{seed:0000000000}-{number:00}-{call:000}";
            await nodes.PostAsync("api/visits", new { id = visit, demo = true }, random);
            var asked = await SayAsync(visit, 0, "remind me in one minute");
            for (var turn = 1; turn < TurnsOfAVisit && !over.IsCancellationRequested; turn++)
            {
                asked = await SayAsync(visit, turn, turn % 4 == 3 ? "why" : Answers.To(asked));
                await Task.Delay(random.Next(700, 1500), over).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }

            await AwaitReminderAsync(visit);
        }
    }

    private async Task<string?> SayAsync(string visit, int turn, string text)
    {
        var id = string.Create(CultureInfo.InvariantCulture, $"{visit}-{turn:0000}");
        var asked = ledger.Now;
        var view = await nodes.PostAsync($"api/visits/{visit}/messages", new { id, by = "kim", text }, random);
        var reply = view["reply"]!;
        ledger.Take(new("page", visit, id, reply.ToJsonString(), ledger.Now, ledger.Now - asked));
        return (string?)reply["asked"];
    }

    private async Task AwaitReminderAsync(string visit)
    {
        for (var (until, came) = (ledger.Now + TimeSpan.FromMinutes(4), 0); came == 0;)
        {
            Assert.True(ledger.Now < until, $"The reminder of {visit} did not come.");
            await Task.Delay(random.Next(2000, 4000));
            came = await AskAsync(visit);
        }

        Reminders++;
        await Task.Delay(random.Next(500, 1500));
        Assert.True(await AskAsync(visit) == 0, $"The reminder of {visit} came again.");
    }

    // The same name until an answer has arrived: a reminder given to an answer that was lost is given again.
    private async Task<int> AskAsync(string visit)
    {
        var due = (JsonArray)await nodes.PostAsync($"api/visits/{visit}/reminders", new { id = $"asking-{random.NextInt64():x16}" }, random);
        Assert.True(due.Count < 2, $"{visit} got {due.Count} reminders at once.");
        return due.Count(d => ((string)d!["say"]!).StartsWith("Time is up.", StringComparison.Ordinal));
    }
}
