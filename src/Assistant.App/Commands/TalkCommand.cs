using System.CommandLine;
using System.Text;
using Assistant.App.Demo;
using Assistant.App.Hosting;
using Assistant.App.Talk;
using Assistant.Records.Conversations;

namespace Assistant.App.Commands;

/// <summary><c>talk</c>: a call in the terminal, or a whole one from a script.</summary>
internal static class TalkCommand
{
    private static readonly Option<string?> Data = Options.Data();
    private static readonly Option<string> Units = Options.Units();
    private static readonly Option<string?> Site = new("--site") { Description = "Where the warm room is; opens a new visit.", HelpName = "NAME" };
    private static readonly Option<bool> New = new("--new") { Description = "Open a new visit, even where one is under way." };
    private static readonly Option<bool> Demo = new("--demo") { Description = "The invented call; nothing of it is kept unless --data is given." };
    private static readonly Option<string?> Script = new("--script") { Description = "Read what is said from a file, or - for standard input.", HelpName = "FILE" };
    private static readonly Option<bool> Json = new("--json") { Description = "With --script: one JSON object a turn." };

    public static Command Create()
    {
        var command = new Command("talk", "Talk through a call in this terminal.") { Data, Units, Site, New, Demo, Script, Json };
        command.SetWork(RunAsync);
        return command;
    }

    private static Task RunAsync(ParseResult arguments, CancellationToken cancellation) => arguments.GetValue(Script) is { } script
        ? ScriptAsync(script, arguments, cancellation)
        : arguments.GetValue(Json)
            ? throw new CommandFailure("--json goes with --script FILE.")
            : TalkAsync(arguments, cancellation);

    private static async Task TalkAsync(ParseResult arguments, CancellationToken cancellation)
    {
        using var temporary = arguments.GetValue(Demo) && arguments.GetValue(Data) is null ? new TemporaryFolder() : null;
        var data = temporary is null ? arguments.Records(Data) : DataFolder.Open(temporary.Path);
        await using var room = await CallRoom.OpenAsync(data, new() { Units = arguments.Read(Units) }, cancellation, isTalkedInAtOnce: true);
        var start = new TalkStart(
            arguments.GetValue(Site), arguments.Read(Units), arguments.GetValue(New), arguments.GetValue(Demo) ? DemoVisit.Load() : null);
        await new InteractiveTalk(room, TimeProvider.System, Console.In, Console.Out).RunAsync(start, cancellation);
    }

    private static async Task ScriptAsync(string file, ParseResult arguments, CancellationToken cancellation)
    {
        var lines = ScriptReader.Read(file, InputFile.ReadLines(file)).ToList();
        using var temporary = arguments.GetValue(Data) is null ? new TemporaryFolder() : null;
        var data = temporary is null ? arguments.Records(Data) : DataFolder.Open(temporary.Path);
        var options = new ConversationOptions { Units = arguments.Read(Units) };
        await using var room = await CallRoom.OpenAsync(data, temporary is null ? options : options with { NewVisitId = () => "visit-1" }, cancellation);

        var demo = arguments.GetValue(Demo) ? DemoVisit.Load() : null;
        var start = new TalkStart(arguments.GetValue(Site), arguments.Read(Units), arguments.GetValue(New), demo);
        await using var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false)) { AutoFlush = true };
        await foreach (var turn in ScriptRunner.RunAsync(room, start, lines, repeatable: temporary is not null, cancellation))
        {
            await output.WriteLineAsync(arguments.GetValue(Json) ? turn.ToJson() : turn.ToText());
        }
    }
}
