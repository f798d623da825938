using Assistant.Voice.Sound;

namespace Assistant.Voice.Speaking;

/// <summary>A voice that can begin to make a sound before it is sure that it will be wanted. Keeps the one prepared last.</summary>
public sealed class SpeechAhead(ISpeechVoice voice) : ISpeechVoice
{
    private (string Spoken, SpeakingStyle Style, Task<PcmAudio> Sound)? prepared;

    /// <summary>Begins with a sound that may be wanted; what goes wrong with it is told when it is wanted.</summary>
    public void Prepare(string spoken, SpeakingStyle style) => prepared = (spoken, style, voice.SayAsync(spoken, style));

    public Task<PcmAudio> SayAsync(string spoken, SpeakingStyle style, CancellationToken cancellation = default)
    {
        var ready = prepared is { } made && made.Spoken == spoken && made.Style == style ? made.Sound : null;
        prepared = null;
        return ready is { IsFaulted: false, IsCanceled: false } ? ready.WaitAsync(cancellation) : voice.SayAsync(spoken, style, cancellation);
    }
}
