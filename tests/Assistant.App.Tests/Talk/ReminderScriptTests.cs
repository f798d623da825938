using Assistant.App.Hosting;
using Assistant.App.Talk;
using Assistant.Channels.Shaping;
using Assistant.Records.Outbox;
using Assistant.Records.Reminders;
using Assistant.Trade.Quantities;

namespace Assistant.App.Tests.Talk;

public class ReminderScriptTests
{
    [Fact]
    public async Task A_reminder_falls_due_when_the_clock_moves_on_and_is_given_once()
    {
        var turns = await RunAsync("ok", "tell me in fifteen minutes", "+14m", "+2m", "+1h");

        Assert.Equal(3, turns.Count);
        Assert.Equal((null, null), (turns[2].In, turns[2].By));
        Assert.StartsWith("Time is up.", turns[2].Say, StringComparison.Ordinal);
        Assert.Equal("refrigerant", turns[2].Asks);
    }

    [Fact]
    public async Task Asked_again_under_one_name_after_an_answer_that_did_not_arrive_the_same_is_given_again()
    {
        await using var room = await RoomAsync();
        await RunAsync(room, "ok", "tell me in fifteen minutes");
        async Task<string[]> AskAsync(string asking) => [.. (await room.Reminders.TakeDueAsync(
            ReplyShaping.TerminalChannel, "script", ScriptClock.FixedStart.AddHours(1), default, asking)).Select(r => r.Say.Full)];

        var first = await AskAsync("asking-1");

        Assert.StartsWith("Time is up.", Assert.Single(first), StringComparison.Ordinal);
        Assert.Equal(first, await AskAsync("asking-1"));
        Assert.Empty(await AskAsync("asking-2"));
    }

    [Fact]
    public async Task Who_works_alone_is_asked_and_who_does_not_answer_is_looked_for()
    {
        var turns = await RunAsync("ok", "check on me every 20 minutes, alert Ben", "+20m", "im fine", "+20m", "+5m", "+1h");

        Assert.Equal([null, null, null], turns.Where(t => t.In is null).Select(t => t.By));
        Assert.StartsWith("Are you all right?", turns[2].Say, StringComparison.Ordinal);
        Assert.StartsWith("Good to hear.", turns[3].Say, StringComparison.Ordinal);
        Assert.StartsWith("Are you all right?", turns[4].Say, StringComparison.Ordinal);
        Assert.StartsWith("No answer: Ben has been alerted.", turns[5].Say, StringComparison.Ordinal);
        Assert.Equal(6, turns.Count);
    }

    [Fact]
    public async Task The_alert_waits_in_the_outbox_under_the_name_of_the_contact()
    {
        await using var room = await RoomAsync();
        await RunAsync(room, "ok", "check on me every 20 minutes, alert Ben", "+20m");
        await room.Reminders.AlertAsync(ScriptClock.FixedStart.AddMinutes(26), default);

        var waiting = Assert.Single(await new ReplyOutbox(room.Log.Database).DueAsync(ContactAlert.Channel, ScriptClock.FixedStart.AddMinutes(26)));
        Assert.Equal("Ben", waiting.Conversation);
        Assert.Contains("ALERT: technician, working alone at", waiting.Reply.Say.Full, StringComparison.Ordinal);
    }

    private static async Task<List<ScriptTurn>> RunAsync(params string[] lines)
    {
        await using var room = await RoomAsync();
        return await RunAsync(room, lines);
    }

    private static async Task<List<ScriptTurn>> RunAsync(CallRoom room, params string[] lines) =>
        await ScriptRunner.RunAsync(room, new(null, UnitSystem.Us, true, null), ScriptReader.Read("s.txt", lines), repeatable: true, default).ToListAsync();

    private static Task<CallRoom> RoomAsync() =>
        CallRoom.OpenAsync(DataFolder.Open(Directory.CreateTempSubdirectory("coldwalk-").FullName), new(), default);
}
