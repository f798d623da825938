using Assistant.Voice.Hearing;
using Assistant.Voice.Sound;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Dialogues;

/// <summary>
/// The ear for a running sound. While it waits for a pause long enough to end an utterance, what was said is already heard and what
/// would be said to it already spoken into the drawer; if more comes, both are thrown away. One caller at a time.
/// </summary>
public sealed class LiveEar(VoiceSession session, SpeechAhead speech, EndpointerSettings? settings = null)
{
    private readonly EndpointerSettings settings = settings ?? new();
    private Endpointer ear = new(settings ?? new());

    /// <summary>Whether somebody is speaking.</summary>
    public bool Speaking => ear.Speaking;

    /// <summary>What came before is not part of the next utterance.</summary>
    public void Forget() => ear = new(settings);

    /// <summary>Takes the next piece; gives an utterance once its end is sure.</summary>
    public PcmAudio? Take(ReadOnlyMemory<short> piece)
    {
        if (ear.Take(piece).FirstOrDefault() is { } utterance)
        {
            return utterance;
        }

        if (ear.Likely is not { } likely)
        {
            return null;
        }

        session.HearAhead(likely, speech.Prepare);
        return ear.QuietFrames >= settings.WholeEndFrames && session.IsWhole(likely) ? ear.End() : null;
    }
}
