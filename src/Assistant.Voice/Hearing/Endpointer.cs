using Assistant.Voice.Sound;

namespace Assistant.Voice.Hearing;

/// <summary>
/// Finds where speech begins and ends in a running sound, by its level over the noise around it. Fed in any pieces; gives each
/// utterance once its end is sure. The level is measured on the difference from sample to sample, which keeps out a fan's hum.
/// </summary>
public sealed class Endpointer(EndpointerSettings settings)
{
    private readonly List<short> kept = [];
    private readonly Queue<double> levels = new();
    private readonly List<double> spoken = [];
    private short previous;
    private int loudFrames;
    private int quietFrames;
    private int pending;
    private bool speaking;

    private int FrameSamples => settings.Rate / 100;

    /// <summary>Whether an utterance has begun and not ended.</summary>
    public bool Speaking => speaking;

    /// <summary>
    /// What was said, where it has likely ended: with a short pause behind it, and the very sound that is given once the end is sure.
    /// Null while somebody speaks.
    /// </summary>
    public PcmAudio? Likely { get; private set; }

    /// <summary>How long it has been quiet, in frames of 10 ms.</summary>
    public int QuietFrames => quietFrames;

    /// <summary>The utterance that has likely ended is over.</summary>
    public PcmAudio? End() => Likely is null ? null : Cut();

    /// <summary>Takes more sound, and gives the utterances that have ended within it.</summary>
    public IEnumerable<PcmAudio> Take(ReadOnlyMemory<short> sound)
    {
        var ended = new List<PcmAudio>();
        foreach (var sample in sound.Span)
        {
            kept.Add(sample);
            if (++pending == FrameSamples)
            {
                pending = 0;
                if (Frame() is { } utterance)
                {
                    ended.Add(utterance);
                }
            }
        }

        return ended;
    }

    /// <summary>The sound is over: what was being said ends here.</summary>
    public PcmAudio? Finish() => speaking ? Cut() : null;

    private PcmAudio? Frame()
    {
        var level = Level();
        var threshold = Threshold(level);
        if (!speaking || levels.Count < settings.FloorFrames)
        {
            levels.Enqueue(level);
            if (levels.Count > settings.FloorFrames)
            {
                levels.Dequeue();
            }
        }

        var loud = level > threshold;
        spoken.Add(level);
        (loudFrames, quietFrames) = loud ? (loudFrames + 1, 0) : (0, quietFrames + 1);
        Likely = loud ? null : Likely;
        if (!speaking)
        {
            speaking = loudFrames >= settings.StartFrames;
            Forget();
            return null;
        }

        if (loudFrames >= settings.NewNoiseFrames)
        {
            // Speech has gaps; a sound without one is a fan that has come on, and from here on it is the noise.
            levels.Clear();
            Drop();
            return null;
        }

        if (quietFrames == settings.LikelyEndFrames && settings.LikelyEndFrames < settings.EndFrames && IsSpeech())
        {
            Likely = new([.. kept], settings.Rate);
        }

        return quietFrames >= settings.EndFrames || kept.Count >= settings.LongestSeconds * settings.Rate ? Cut() : null;
    }

    private double Level()
    {
        var sum = 0.0;
        foreach (var sample in kept.Skip(kept.Count - FrameSamples))
        {
            var step = sample - previous;
            sum += (double)step * step;
            previous = sample;
        }

        return 10 * Math.Log10((sum / FrameSamples) + 1);
    }

    private double Threshold(double level)
    {
        var floor = levels.Count == 0 ? level : levels.Order().ElementAt((int)(settings.FloorShare * (levels.Count - 1)));
        return Math.Max(floor + settings.OverNoise, settings.LeastLevel);
    }

    private PcmAudio? Cut()
    {
        var utterance = Likely ?? (IsSpeech() ? new PcmAudio([.. kept], settings.Rate) : null);
        Drop();
        return utterance;
    }

    // Measured again at its end: with a microphone just opened the noise is only known by then, and a fan's first second is no speech.
    private bool IsSpeech()
    {
        var threshold = Threshold(double.MaxValue);
        return spoken.Count(level => level > threshold) >= settings.LeastSpeechFrames;
    }

    private void Drop()
    {
        kept.Clear();
        spoken.Clear();
        Likely = null;
        (speaking, loudFrames, quietFrames) = (false, 0, 0);
    }

    private void Forget()
    {
        var lead = settings.LeadFrames * FrameSamples;
        if (!speaking && kept.Count > lead)
        {
            kept.RemoveRange(0, kept.Count - lead);
        }

        if (!speaking)
        {
            spoken.RemoveRange(0, spoken.Count - loudFrames);
        }
    }
}
