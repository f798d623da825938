using Assistant.Voice.Grammars;
using Assistant.Voice.Hearing.Native;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Hearing;

/// <summary>
/// Turns one utterance into words of a grammar, offline. Every utterance is decoded whole and on a fresh stream, so the same sound
/// always gives the same words; its frames are scored once for all that is asked of it. One utterance at a time; callers wait for each other.
/// </summary>
public sealed class SpeechRecogniser : IDisposable
{
    private const string Background = "background";

    /// <summary>Half a second of nothing that is just loud enough to be looked at.</summary>
    private static readonly PcmAudio Rush = new([.. Enumerable.Range(0, PcmAudio.HearingRate / 2).Select(i => (short)((i * 7919 % 400) - 200))], PcmAudio.HearingRate);

    private readonly Lock turn = new();
    private readonly SphinxDecoder scorer;
    private readonly SphinxDecoder decoder;
    private readonly SenoneScores scores;
    private readonly HearingThresholds thresholds;
    private readonly HashSet<string> known = new(StringComparer.Ordinal);
    private bool isClosed;

    private SpeechRecogniser(SphinxDecoder scorer, SphinxDecoder decoder, SenoneScores scores, HearingThresholds thresholds) =>
        (this.scorer, this.decoder, this.scores, this.thresholds) = (scorer, decoder, scores, thresholds);

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
            // The steady noise is taken out before; a second remover would only take from the speech. All senones are scored in every frame, so that a grammar's score and free speech's can be compared.
            string[] options = ["-hmm", model.Folder, "-compallsen", "yes", "-allphone_ci", "yes", "-logfn", "/dev/null", "-samprate", "16000", "-remove_silence", "no", "-remove_noise", "no", "-pl_window", "0"];
            var scores = SenoneScores.Create();
            var scorer = SphinxDecoder.Open([.. options, "-senlogdir", scores.Folder]);
            scorer.SetPhoneLoop(Background);
            return new(scorer, SphinxDecoder.Open([.. options, "-dict", dictionary]), scores, thresholds ?? new());
        }
        finally
        {
            File.Delete(dictionary);
        }
    }

    /// <summary>The words of the grammar that fit the utterance best, and whether they fit well enough to be meant.</summary>
    /// <param name="rivals">
    /// For the words heard, all they must be told apart from: the margin is by how much they fit better. Null for words that need none.
    /// </param>
    /// <param name="asked">For the words heard, what was asked for instead, where they are something nobody asked for; otherwise null.</param>
    public Heard Hear(PcmAudio speech, SpeechGrammar grammar, Func<string, SpeechGrammar?>? rivals = null, Func<string, SpeechGrammar?>? asked = null)
    {
        ArgumentNullException.ThrowIfNull(speech);
        ArgumentNullException.ThrowIfNull(grammar);
        lock (turn)
        {
            ObjectDisposedException.ThrowIf(isClosed, this);
            var sound = speech.At(PcmAudio.HearingRate);
            if (IsNoise(sound))
            {
                return Heard.Nothing;
            }

            sound = ComfortNoise.Under(SpeechSpan.Of(NoiseReduction.Of(sound)));
            try
            {
                var free = scorer.Decode(Background, sound);
                var best = Decode(grammar, Beams.Usual);
                var heard = Judge(best, free, grammar);
                return heard.Accepted is not { } words ? heard : heard with
                {
                    Margin = rivals?.Invoke(words) is { } others ? Margin(best, others) : null,
                    Asked = asked?.Invoke(words) is { IsEmpty: false } answers ? Judge(Decode(answers, Beams.Wide), free, answers) : null,
                };
            }
            finally
            {
                // Nothing of what was said stays, also where the program is killed before the next utterance.
                scores.Clear();
            }
        }
    }

    /// <summary>Makes ready for a grammar: the first utterance of all would otherwise wait for it, and for the program's own code to be compiled.</summary>
    public void WarmUp(SpeechGrammar grammar) => Hear(Rush, grammar, _ => grammar);

    /// <summary>Waits for what is being heard: the library does not bear being taken away under it.</summary>
    public void Dispose()
    {
        lock (turn)
        {
            if (!isClosed)
            {
                isClosed = true;
                scorer.Dispose();
                decoder.Dispose();
                scores.Dispose();
            }
        }
    }

    private bool IsNoise(PcmAudio sound) => sound.Duration < thresholds.LeastSpeech || sound.Loudness() < thresholds.LeastLoudness;

    private Heard Judge(Decoded words, Decoded free, SpeechGrammar grammar)
    {
        if (string.IsNullOrEmpty(words.Words))
        {
            return new(HeardKind.NotForUs, null, double.NegativeInfinity);
        }

        var fit = (words.Score - free.Score) / Math.Max(1, words.Frames);
        return new(fit >= (grammar.IsName ? thresholds.LeastNameFit : thresholds.LeastFit) ? HeardKind.Words : HeardKind.NotForUs, words.Words, fit);
    }

    // Rivals that come to no words at all were lost on the way and not beaten: that is as unclear as a rival that fits as well.
    private double Margin(Decoded best, SpeechGrammar others) =>
        others.IsEmpty ? double.PositiveInfinity
        : Decode(others, Beams.Wide) is { Words: not null } other ? (best.Score - other.Score) / Math.Max(1, best.WordFrames)
        : 0;

    private Decoded Decode(SpeechGrammar grammar, Beams beams)
    {
        if (known.Add(grammar.Name))
        {
            decoder.SetGrammar(grammar.Name, grammar.Jsgf, beams);
        }

        var decoded = decoder.Decode(grammar.Name, scores);
        if (grammar.IsPassing)
        {
            known.Remove(grammar.Name);
            decoder.Remove(grammar.Name);
        }

        return decoded;
    }
}
