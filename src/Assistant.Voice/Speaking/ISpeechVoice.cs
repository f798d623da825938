using Assistant.Voice.Sound;

namespace Assistant.Voice.Speaking;

/// <summary>What turns text for the ear into sound. The browser's own voice is another, which takes the same text on the page.</summary>
public interface ISpeechVoice
{
    /// <param name="spoken">Text as <see cref="SpokenText"/> makes it; digits that stand apart are said one by one.</param>
    /// <exception cref="VoicePartMissingException">The voice is not installed or fails.</exception>
    Task<PcmAudio> SayAsync(string spoken, SpeakingStyle style, CancellationToken cancellation = default);
}
