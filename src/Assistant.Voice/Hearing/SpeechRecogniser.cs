using Assistant.Voice.Grammars;
using Assistant.Voice.Hearing.Native;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Hearing;

/// <summary>
/// Turns one utterance into words of a grammar, offline. Every utterance is decoded whole and on a fresh stream, so the same sound
/// always gives the same words. One utterance at a time; callers wait for each other.
/// </summary>
public sealed class SpeechRecogniser : IDisposable
{
    private const string Background = "background";

    private readonly Lock turn = new();
    private readonly SphinxDecoder decoder;
    private readonly HearingThresholds thresholds;
    private readonly HashSet<string> known = new(StringComparer.Ordinal);

    private SpeechRecogniser(SphinxDecoder decoder, HearingThresholds thresholds) => (this.decoder, this.thresholds) = (decoder, thresholds);

    /// <param name="vocabulary">Every word that a grammar will ever use.</param>
    /// <exception cref="VoicePartMissingException">A library or the model is not installed.</exception>
    public static SpeechRecogniser Open(AcousticModel model, PronunciationDictionary sounds, IEnumerable<string> vocabulary, HearingThresholds? thresholds = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(sounds);
        model.Check();
        var dictionary = Path.GetTempFileName();
        try
        {
            File.WriteAllText(dictionary, sounds.FileFor(vocabulary));
            // All senones are scored in every frame, so that a grammar's score and free speech's can be compared.
            var decoder = SphinxDecoder.Open(
                "-hmm", model.Folder, "-dict", dictionary, "-compallsen", "yes", "-allphone_ci", "yes", "-logfn", "/dev/null", "-samprate", "16000", "-remove_silence", "no");
            decoder.SetPhoneLoop(Background);
            return new(decoder, thresholds ?? new());
        }
        finally
        {
            File.Delete(dictionary);
        }
    }

    /// <summary>The words of the grammar that fit the utterance best, and whether they fit well enough to be meant.</summary>
    public Heard Hear(PcmAudio speech, SpeechGrammar grammar)
    {
        lock (turn)
        {
            var sound = speech.At(PcmAudio.HearingRate);
            if (IsNoise(sound))
            {
                return Heard.Nothing;
            }

            var free = decoder.Decode(Background, sound);
            return Judge(decoder.Decode(Prepared(grammar), sound), free);
        }
    }

    /// <summary>
    /// As <see cref="Hear"/>, and where the words are on one side also how clearly: the margin of that side over the other.
    /// </summary>
    /// <param name="grammar">All that may be said, both sides included.</param>
    /// <param name="side">The side that must win clearly.</param>
    /// <param name="other">The side it must beat.</param>
    public Heard HearBetween(PcmAudio speech, SpeechGrammar grammar, SpeechGrammar side, SpeechGrammar other)
    {
        lock (turn)
        {
            var sound = speech.At(PcmAudio.HearingRate);
            if (IsNoise(sound))
            {
                return Heard.Nothing;
            }

            var heard = Judge(decoder.Decode(Prepared(grammar), sound), decoder.Decode(Background, sound));
            var (with, without) = (decoder.Decode(Prepared(side), sound), decoder.Decode(Prepared(other), sound));
            var margin = with.Words is null ? double.NegativeInfinity
                : without.Words is null ? double.PositiveInfinity
                : (double)(with.Score - without.Score) / Math.Max(1, with.Frames);
            return heard with { Margin = margin };
        }
    }

    public void Dispose() => decoder.Dispose();

    private bool IsNoise(PcmAudio sound) => sound.Duration < thresholds.LeastSpeech || sound.Loudness() < thresholds.LeastLoudness;

    private Heard Judge(Decoded words, Decoded free)
    {
        if (string.IsNullOrEmpty(words.Words))
        {
            return new(HeardKind.NotForUs, null, double.NegativeInfinity);
        }

        var fit = (double)(words.Score - free.Score) / Math.Max(1, words.Frames);
        return new(fit >= thresholds.LeastFit ? HeardKind.Words : HeardKind.NotForUs, words.Words, fit);
    }

    private string Prepared(SpeechGrammar grammar)
    {
        if (known.Add(grammar.Name))
        {
            decoder.SetGrammar(grammar.Name, grammar.Jsgf);
        }

        return grammar.Name;
    }
}
