using Assistant.Voice.Sound;

namespace Assistant.Voice.Hearing;

/// <summary>How an <see cref="Endpointer"/> tells speech from noise. A frame is 10 ms; levels are in dB of sample steps.</summary>
public sealed record EndpointerSettings
{
    public int Rate { get; init; } = PcmAudio.HearingRate;

    /// <summary>For a word said over the assistant's own speech: short, and louder than the loudest that comes back of that.</summary>
    public static EndpointerSettings OverSpeech { get; } = new() { EndFrames = 25, FloorShare = 0.9, FloorFrames = 45, LeadFrames = 30, LikelyEndFrames = 20 };

    /// <summary>How far over the noise a frame is loud, dB.</summary>
    public double OverNoise { get; init; } = 6;

    /// <summary>A frame below this is quiet whatever is around it, dB.</summary>
    public double LeastLevel { get; init; } = 22;

    /// <summary>Loud frames that begin an utterance.</summary>
    public int StartFrames { get; init; } = 4;

    /// <summary>Quiet frames that end it: long enough for the pause inside "one hundred ... seventeen".</summary>
    public int EndFrames { get; init; } = 40;

    /// <summary>Quiet frames after which it has likely ended, so that it can be heard ahead while the rest is waited for. The shorter, the sooner; the longer, the more of a soft last sound is left.</summary>
    public int LikelyEndFrames { get; init; } = 26;

    /// <summary>Quiet frames that end an utterance whose words are whole: what could follow changes nothing.</summary>
    public int WholeEndFrames { get; init; } = 30;

    /// <summary>Loud frames without which it was a knock.</summary>
    public int LeastSpeechFrames { get; init; } = 10;

    /// <summary>Frames kept from before it was loud: the soft beginning of a word, and enough of the fan alone to take it out by.</summary>
    public int LeadFrames { get; init; } = 60;

    /// <summary>The share of frames that are no louder than the noise: its level is the loudest of them.</summary>
    public double FloorShare { get; init; } = 0.2;

    /// <summary>Frames over which the noise is measured.</summary>
    public int FloorFrames { get; init; } = 200;

    /// <summary>Loud frames without one quiet between that are no speech but a noise that came on.</summary>
    public int NewNoiseFrames { get; init; } = 250;

    public double LongestSeconds { get; init; } = 12;
}
