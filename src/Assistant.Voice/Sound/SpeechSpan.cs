namespace Assistant.Voice.Sound;

/// <summary>The stretch of an utterance from its first loud frame to its last: nothing is heard in the pauses around it, and hearing them takes time.</summary>
public static class SpeechSpan
{
    private const int FramesPerSecond = 100;

    /// <summary>How far over the quietest fifth a frame is loud, and the level below which none is, in dB of sample steps.</summary>
    private const double OverNoise = 8;
    private const double LeastLevel = 22;

    /// <summary>Kept on both sides: the soft beginning and end of a word, and the pause the recogniser wants to see.</summary>
    private const int MarginFrames = 20;

    /// <summary>The speech with a fifth of a second on both sides, or the whole sound where nothing in it stands out.</summary>
    public static PcmAudio Of(PcmAudio sound)
    {
        ArgumentNullException.ThrowIfNull(sound);
        var frame = sound.Rate / FramesPerSecond;
        var levels = sound.Samples.Chunk(frame).Select(Level).ToList();
        if (levels.Count < FramesPerSecond / 10)
        {
            return sound;
        }

        var threshold = Math.Max(LeastLevel, levels.Order().ElementAt(levels.Count / 5) + OverNoise);
        var (first, last) = (levels.FindIndex(l => l > threshold), levels.FindLastIndex(l => l > threshold));
        return first < 0 ? sound : sound.Slice((first - MarginFrames) * frame, (last + 1 + MarginFrames) * frame);
    }

    // Of the difference from sample to sample, which leaves out a fan's hum.
    private static double Level(short[] samples)
    {
        var sum = 0.0;
        for (var i = 1; i < samples.Length; i++)
        {
            var step = (double)samples[i] - samples[i - 1];
            sum += step * step;
        }

        return 10 * Math.Log10((sum / samples.Length) + 1);
    }
}
