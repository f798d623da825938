namespace Assistant.Voice.Sound;

/// <summary>
/// Lifts the pauses of an utterance to a faint rush, as of a quiet room: the recogniser was trained in rooms, and digital silence
/// around words costs it as much as a fan does. Pure: the same sound always gets the same rush.
/// </summary>
public static class ComfortNoise
{
    /// <summary>How far below the speech, in dB. Set on voices that no figure is reported for.</summary>
    private const double BelowSpeech = 30;

    /// <summary>What a sample keeps of the one before: the rush falls with frequency, as a room's does.</summary>
    private const double Pole = 0.9;
    private const int FramesPerSecond = 100;
    private const uint Seed = 12_345;

    /// <summary>The sound with its quietest fifth no further below its speech than that; unchanged where it is not.</summary>
    public static PcmAudio Under(PcmAudio sound)
    {
        ArgumentNullException.ThrowIfNull(sound);
        var powers = sound.Samples.Chunk(sound.Rate / FramesPerSecond).Select(frame => frame.Average(s => (double)s * s)).ToList();
        if (powers.Count == 0 || powers.Max() == 0)
        {
            return sound;
        }

        var sounding = powers.Max() / 1000;
        var wanted = powers.Where(p => p > sounding).Average() / Math.Pow(10, BelowSpeech / 10);
        var there = powers.Order().Take(Math.Max(1, powers.Count / 5)).Average();
        return there < wanted ? Added(sound, Math.Sqrt(wanted - there)) : sound;
    }

    private static PcmAudio Added(PcmAudio sound, double loudness)
    {
        var samples = new short[sound.Samples.Length];

        // Even numbers from -1 to 1 have a root mean square of one over the root of three.
        var gain = loudness * Math.Sqrt(3) * Math.Sqrt(1 - (Pole * Pole));
        var (state, rush) = (Seed, 0.0);
        for (var i = 0; i < samples.Length; i++)
        {
            // Numerical Recipes' linear congruential generator.
            state = unchecked((state * 1_664_525) + 1_013_904_223);
            rush = (Pole * rush) + (gain * ((state / 2_147_483_648.0) - 1));
            samples[i] = (short)Math.Clamp(Math.Round(sound.Samples[i] + rush), short.MinValue, short.MaxValue);
        }

        return sound with { Samples = samples };
    }
}
