using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Sound;
using Assistant.Voice.Speaking;

namespace Assistant.App.Listen;

/// <summary>A talk from WAV files to WAV files: each file of a folder, in the order of their names, is one utterance.</summary>
internal sealed class WavTalk(VoiceSession session, ISpeechVoice voice, TextWriter log)
{
    /// <param name="opening">The reply that opened the visit just now, with its cautions; null where it was open.</param>
    /// <param name="output">Where the replies go, as 000.wav, 001.wav ...; null writes none.</param>
    public async Task RunAsync(IEnumerable<string> files, Reply? opening, string? output, CancellationToken cancellation)
    {
        var number = 0;
        await SayAsync(await session.StartAsync(opening, cancellation), number, output, cancellation);
        foreach (var file in files)
        {
            var turn = await session.HearAsync(WavFile.Read(file), cancellation);
            await log.WriteLineAsync($"> {Path.GetFileName(file)}: {turn.Heard.Words ?? "nothing"}{(turn.Heard.Accepted is null ? ", not taken" : "")}");
            await SayAsync(turn, ++number, output, cancellation);
        }
    }

    private async Task SayAsync(VoiceTurn turn, int number, string? output, CancellationToken cancellation)
    {
        await log.WriteLineAsync($"< {turn.Say}");
        if (output is not null && turn.Say.Length > 0)
        {
            WavFile.Write(Path.Combine(output, number.ToString("000", CultureInfo.InvariantCulture) + ".wav"), await voice.SayAsync(turn.Say, session.State!.Style, cancellation));
        }
    }
}
