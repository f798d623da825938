using Assistant.Voice.Speaking;

namespace Assistant.Voice.Dialogues;

/// <summary>What the voice does with what it heard.</summary>
/// <param name="Say">What it says; empty for nothing.</param>
/// <param name="Send">What the conversation is told; null for nothing. Its reply comes back by <see cref="VoiceDialogue.Answered"/>.</param>
public sealed record VoiceStep(VoiceState State, string Say, string? Send = null)
{
    /// <param name="keep">"Say again" afterwards repeats what stood before, the question or the number.</param>
    internal static VoiceStep Speak(VoiceState state, string say, bool keep = false) => new(keep ? state : state with { Last = say }, say);

    internal static VoiceStep Repeat(VoiceState state) => new(state, state.Last);

    internal static VoiceStep AskAgain(VoiceState state, string before) => Speak(state, $"{before} {ReplySpeech.Question(state.Asked)}".Trim());
}
