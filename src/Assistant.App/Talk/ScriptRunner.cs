using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Assistant.App.Hosting;
using Assistant.Channels.Bots;
using Assistant.Channels.Shaping;
using Assistant.Channels.Terminal;
using Assistant.Dialogue.Replies;

namespace Assistant.App.Talk;

/// <summary>Runs a script through the same handler as every channel, by a clock of its own.</summary>
internal static class ScriptRunner
{
    private const string Conversation = "script";
    private const string Technician = "technician";

    /// <summary>The turns in order, each as soon as it is there.</summary>
    /// <param name="repeatable">
    /// True on an empty store: messages are named by their place, so that runs are alike. On kept records each run names them anew,
    /// so that it is not taken for a repetition of the last one.
    /// </param>
    public static async IAsyncEnumerable<ScriptTurn> RunAsync(
        CallRoom room, TalkStart start, IEnumerable<ScriptLine> lines, bool repeatable, [EnumeratorCancellation] CancellationToken cancellation)
    {
        var clock = new ScriptClock(await StartTimeAsync(room, cancellation));
        var terminal = new TerminalAdapter(new ColdwalkBot(room, clock));
        var run = repeatable ? "script" : Guid.NewGuid().ToString("N");
        ImmutableArray<SpokenCaution> opening = [];
        if (start.AsksForNewVisit)
        {
            opening = (await start.OpenAsync(room, ReplyShaping.TerminalChannel, Conversation, Technician, clock.GetUtcNow(), cancellation)).Reply.Cautions;
        }

        var said = 0;
        foreach (var line in lines)
        {
            switch (line)
            {
                case WaitLine wait:
                    clock.MoveOn(wait.Time);
                    foreach (var due in await room.Reminders.TakeDueAsync(ReplyShaping.TerminalChannel, Conversation, clock.GetUtcNow(), cancellation))
                    {
                        yield return ScriptTurn.Of(null, null, due);
                    }

                    break;
                case SpokenLine spoken:
                    var by = spoken.By ?? Technician;
                    var turn = await terminal.SayAsync($"{run}-{++said}", Conversation, by, spoken.Text, cancellation);
                    if (turn.Reply is { } reply)
                    {
                        yield return ScriptTurn.Of(spoken.Text, by, reply with { Cautions = [.. opening, .. reply.Cautions] });
                        opening = [];
                    }

                    break;
            }
        }
    }

    /// <summary>The fixed start, or the last entry of the visit that the script carries on: a log's times do not run backwards.</summary>
    private static async Task<DateTimeOffset> StartTimeAsync(CallRoom room, CancellationToken cancellation)
    {
        if (await room.Log.VisitOfAsync(ReplyShaping.TerminalChannel, Conversation, cancellation) is not { } visit)
        {
            return ScriptClock.FixedStart;
        }

        var last = (await room.Log.ReadAsync(visit, cancellation)).Max(e => e.At);
        return last > ScriptClock.FixedStart ? last : ScriptClock.FixedStart;
    }
}
