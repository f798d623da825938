using System.CommandLine;
using Assistant.App.Demo;
using Assistant.App.Hosting;
using Assistant.App.Listen;
using Assistant.App.Talk;
using Assistant.Channels.Shaping;
using Assistant.Dialogue.Replies;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Speaking;

namespace Assistant.App.Commands;

/// <summary><c>listen</c>: the same call as <c>talk</c>, spoken. It carries on the visit that the terminal is on.</summary>
internal static class ListenCommand
{
    private const string Conversation = "terminal";

    // A headset's echo is gone within a syllable; a room's takes this long.
    private static readonly TimeSpan Echo = TimeSpan.FromMilliseconds(250);

    private static readonly Option<string?> Data = Options.Data();
    private static readonly Option<string> Units = Options.Units();
    private static readonly Option<string?> Site = new("--site") { Description = "Where the warm room is; opens a new visit.", HelpName = "NAME" };
    private static readonly Option<bool> New = new("--new") { Description = "Open a new visit, even where one is under way." };
    private static readonly Option<bool> Demo = new("--demo") { Description = "The invented call; nothing of it is kept unless --data is given." };
    private static readonly Option<string?> Wav = new("--wav") { Description = "Hear the WAV files of a folder instead of the microphone, in the order of their names.", HelpName = "DIR" };
    private static readonly Option<string?> Out = new("--out") { Description = "With --wav: write each reply there as a WAV file.", HelpName = "DIR" };
    private static readonly Option<string?> Input = new("--microphone") { Description = "An ALSA device to hear by, such as plughw:1,0.", HelpName = "NAME" };
    private static readonly Option<string?> Output = new("--loudspeaker") { Description = "An ALSA device to speak by.", HelpName = "NAME" };

    public static Command Create()
    {
        var command = new Command("listen", "Talk through a call by voice, hands free and offline.") { Data, Units, Site, New, Demo, Wav, Out, Input, Output };
        command.SetWork(RunAsync);
        return command;
    }

    private static async Task RunAsync(ParseResult arguments, CancellationToken cancellation)
    {
        if (arguments.GetValue(Out) is not null && arguments.GetValue(Wav) is null)
        {
            throw new CommandFailure("--out goes with --wav DIR.");
        }

        var files = arguments.GetValue(Wav) is { } folder ? WavFiles(folder) : null;
        using var temporary = (arguments.GetValue(Demo) || files is not null) && arguments.GetValue(Data) is null ? new TemporaryFolder() : null;
        await using var room = await CallRoom.OpenAsync(temporary is null ? arguments.Records(Data) : DataFolder.Open(temporary.Path), new() { Units = arguments.Read(Units) }, cancellation);
        var start = new TalkStart(arguments.GetValue(Site), arguments.Read(Units), arguments.GetValue(New), arguments.GetValue(Demo) ? DemoVisit.Load() : null);
        using var host = new VoiceHost(room);
        var voice = host.Open();
        var (visit, opening) = await VisitAsync(room, start, cancellation);
        var session = voice.Talk(visit);
        var speaking = new EspeakVoice();
        try
        {
            await (files is null
                ? new HandsFreeTalk(session, speaking, new(arguments.GetValue(Input)), new(arguments.GetValue(Output)), Console.Out, Echo).RunAsync(opening, cancellation)
                : new WavTalk(session, speaking, Console.Out).RunAsync(files, opening, Folder(arguments.GetValue(Out)), cancellation));
        }
        catch (InvalidDataException wrong)
        {
            throw new CommandFailure(wrong.Message + ".", CommandFailure.BadInput);
        }
    }

    // What an opening warns of is said with the first question.
    private static async Task<(IVoiceVisit Visit, Reply? Opening)> VisitAsync(CallRoom room, TalkStart start, CancellationToken cancellation)
    {
        var person = Environment.UserName is { Length: > 0 } name ? name : "technician";
        var open = await room.Log.VisitOfAsync(ReplyShaping.TerminalChannel, Conversation, cancellation);
        Reply? opening = null;
        if (open is null || start.AsksForNewVisit)
        {
            var opened = await start.OpenAsync(room, ReplyShaping.TerminalChannel, Conversation, person, TimeProvider.System.GetUtcNow(), cancellation);
            (open, opening) = (opened.VisitId, opened.Reply);
        }

        var units = (await room.Conversations.StateOfAsync(open, cancellation)).Units;
        return (new VoiceVisit(room, ReplyShaping.TerminalChannel, Conversation, person, TimeProvider.System, units), opening);
    }

    private static IReadOnlyList<string> WavFiles(string folder)
    {
        try
        {
            return Directory.GetFiles(folder, "*.wav") is { Length: > 0 } files
                ? [.. files.Order(StringComparer.Ordinal)]
                : throw new CommandFailure($"{folder}: no WAV file in it; --wav takes a folder with one WAV file an utterance.", CommandFailure.BadInput);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new CommandFailure($"{folder}: the folder can not be read ({failure.Message.TrimEnd('.')}).", CommandFailure.BadInput);
        }
    }

    private static string? Folder(string? path) => path is null ? null : Directory.CreateDirectory(path).FullName;
}
