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

    // Measured again at its end: with a microphone just opened the noise is only known by then, and a fan's first second is no speech.
    private PcmAudio? Cut()
    {
        var utterance = new PcmAudio([.. kept], settings.Rate);
        var threshold = Threshold(double.MaxValue);
        var isSpeech = spoken.Count(level => level > threshold) >= settings.LeastSpeechFrames;
        Drop();
        return isSpeech ? utterance : null;
    }

    private void Drop()
    {
        kept.Clear();
        spoken.Clear();
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

/// <summary>How an <see cref="Endpointer"/> tells speech from noise. A frame is 10 ms; levels are in dB of sample steps.</summary>
public sealed record EndpointerSettings
{
    public int Rate { get; init; } = PcmAudio.HearingRate;

    /// <summary>For a word said over the assistant's own speech: short, and louder than the loudest that comes back of that.</summary>
    public static EndpointerSettings OverSpeech { get; } = new() { EndFrames = 25, FloorShare = 0.9, FloorFrames = 45 };

    /// <summary>How far over the noise a frame is loud, dB.</summary>
    public double OverNoise { get; init; } = 6;

    /// <summary>A frame below this is quiet whatever is around it, dB.</summary>
    public double LeastLevel { get; init; } = 22;

    /// <summary>Loud frames that begin an utterance.</summary>
    public int StartFrames { get; init; } = 4;

    /// <summary>Quiet frames that end it: long enough for the pause inside "one hundred ... seventeen".</summary>
    public int EndFrames { get; init; } = 40;

    /// <summary>Loud frames without which it was a knock.</summary>
    public int LeastSpeechFrames { get; init; } = 10;

    /// <summary>Frames kept from before it was loud: the soft beginning of a word.</summary>
    public int LeadFrames { get; init; } = 30;

    /// <summary>The share of frames that are no louder than the noise: its level is the loudest of them.</summary>
    public double FloorShare { get; init; } = 0.2;

    /// <summary>Frames over which the noise is measured.</summary>
    public int FloorFrames { get; init; } = 200;

    /// <summary>Loud frames without one quiet between that are no speech but a noise that came on.</summary>
    public int NewNoiseFrames { get; init; } = 250;

    public double LongestSeconds { get; init; } = 12;
}
