using Assistant.App.Hosting;
using Assistant.Channels.Bots;
using Assistant.Channels.Shaping;
using Assistant.Channels.Terminal;

namespace Assistant.App.Talk;

/// <summary>A call typed in the terminal: line in, answer out, until the input ends.</summary>
internal sealed class InteractiveTalk(CallRoom room, TimeProvider clock, TextReader input, TextWriter output)
{
    private const string Conversation = "terminal";

    private static readonly string Person = Environment.UserName is { Length: > 0 } name ? name : "technician";

    public async Task RunAsync(TalkStart start, CancellationToken cancellation)
    {
        await SayAsync(await BeginAsync(start, cancellation));
        var terminal = new TerminalAdapter(new ColdwalkBot(room, clock));
        while (await NextLineAsync(cancellation) is { } line)
        {
            foreach (var due in await room.Reminders.TakeDueAsync(ReplyShaping.TerminalChannel, Conversation, clock.GetUtcNow(), cancellation))
            {
                await SayAsync(ReplyShaping.TerminalText(due));
            }

            if (line.Trim() is "quit" or "exit" or "bye")
            {
                break;
            }

            var turn = await terminal.SayAsync(Guid.NewGuid().ToString("N"), Conversation, Person, line, cancellation);
            if (turn.Text.Length > 0)
            {
                await SayAsync(turn.Text);
            }
        }

        await output.WriteLineAsync(start.Demo is null ? Phrase("talk-kept") : start.Demo.Notice);
    }

    private async Task<string> BeginAsync(TalkStart start, CancellationToken cancellation)
    {
        if (!start.AsksForNewVisit && await OpenVisitAsync(cancellation) is { } visit)
        {
            var state = await room.Conversations.StateOfAsync(visit, cancellation);
            var carryOn = room.Dialogue.Phrases.Say("talk-carry-on", state.Units, ("site", state.Site ?? ""));
            return ReplyShaping.TerminalText(room.Now(state) with { Say = carryOn });
        }

        var opened = await start.OpenAsync(room, ReplyShaping.TerminalChannel, Conversation, Person, clock.GetUtcNow(), cancellation);
        var first = ReplyShaping.TerminalText(opened.Reply);
        return start.Demo is null ? $"{Phrase("talk-begin")}\n{first}" : $"{start.Demo.Notice}\n{first}";
    }

    private async Task<string?> OpenVisitAsync(CancellationToken cancellation) =>
        (await room.Visits.OfChannelAsync(ReplyShaping.TerminalChannel, cancellation)).FirstOrDefault(v => v.Conversation == Conversation)?.VisitId;

    private async Task<string?> NextLineAsync(CancellationToken cancellation)
    {
        await output.WriteAsync("> ");
        await output.FlushAsync(cancellation);
        return await input.ReadLineAsync(cancellation);
    }

    private Task SayAsync(string text) => output.WriteLineAsync(text + "\n");

    private string Phrase(string key) => room.Dialogue.Phrases.Say(key, default).Full;
}
