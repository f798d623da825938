using Assistant.Dialogue.Replies;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Hearing;
using Assistant.Voice.Sound;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Scoring.Kit;

/// <summary>How a call by voice went.</summary>
/// <param name="Extra">Utterances beyond one answer a question, one yes a value and one "continue" where cautions come in parts.</param>
/// <param name="Spoken">How long the assistant spoke in all.</param>
/// <param name="Longest">Its longest speech.</param>
/// <param name="Lines">What was said and heard, to be read.</param>
public sealed record SpokenCall(int Utterances, int Extra, TimeSpan Spoken, TimeSpan Longest, IReadOnlyList<string> Lines)
{
    private const int MostUtterances = 90;

    /// <summary>A call sound to sound, WAV in and WAV out each turn.</summary>
    /// <param name="opening">The reply it begins with; null for what the visit asks now.</param>
    /// <param name="answers">To each fact, and to "stop NAME": what is meant, as the conversation is told it, and how it is said, with other ways behind a stroke.</param>
    /// <param name="isOver">Whether the call is at its end, by the reply that was just spoken.</param>
    public static async Task<SpokenCall> HoldAsync(
        VoiceParts parts, EngineVisit visit, Reply? opening, IReadOnlyCollection<(string Asked, string Typed, string Spoken)> answers, SyntheticVoice technician, double decibels, ISpeechVoice assistant, Func<VoiceState, bool> isOver)
    {
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(technician);
        ArgumentNullException.ThrowIfNull(assistant);
        ArgumentNullException.ThrowIfNull(isOver);
        var session = new VoiceSession(parts.Recogniser, parts.Dialogue, visit);
        var meant = answers.ToDictionary(a => a.Asked, a => a.Typed);
        var person = new SyntheticTechnician(answers.ToDictionary(a => a.Asked, a => a.Spoken.Split('/')), meant);
        var turn = await session.StartAsync(opening);
        var (count, needed, spoken, longest, lines) = (0, 0, TimeSpan.Zero, TimeSpan.Zero, new List<string>());
        while (true)
        {
            if (turn.Say.Length > 0)
            {
                var sound = WavFile.Parse(WavFile.ToBytes(await assistant.SayAsync(turn.Say, session.State!.Style)), "reply");
                spoken += sound.Duration;
                longest = sound.Duration > longest ? sound.Duration : longest;
                lines.Add($"< {turn.Say} ({sound.Duration.TotalSeconds:0.0} s)");
            }

            if (isOver(session.State!) || count >= MostUtterances || person.Next(session.State!) is not { } words)
            {
                return new(count, count - needed, spoken, longest, lines);
            }

            count++;
            var asked = session.State!.Asked.AskedFact ?? "stop " + session.State.Asked.Walk?.Stop;
            var wav = WavFile.ToBytes(FanNoise.Behind(technician.Say(words), decibels, 300 + count));
            turn = await session.HearAsync(WavFile.Parse(wav, "answer"));
            needed += turn.Sent is null || turn.Sent != meant.GetValueOrDefault(asked) ? 0 : turn.Sent is "ok" or "done" or "later" || session.LastPhase == VoicePhase.Answer ? 1 : 2;
            needed += session.LastPhase == VoicePhase.GoingOn && session.State.Phase == VoicePhase.Answer ? 1 : 0;
            lines.Add($"> {words} | {turn.Heard.Words} {(turn.Heard.Kind == HeardKind.Words ? "" : turn.Heard.Kind)} {turn.Heard.Fit:0.0} {turn.Heard.Margin:0.0}");
        }
    }
}
