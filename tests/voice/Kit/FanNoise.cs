using Assistant.Voice.Sound;

namespace Assistant.Voice.Scoring.Kit;

/// <summary>
/// A fan like that of an evaporator or condenser: broad noise falling with frequency and the hum of its blades. Invented, not recorded.
/// The same seed gives the same noise.
/// </summary>
public static class FanNoise
{
    private const double BladePassHertz = 87;

    /// <summary>The speech with the fan behind it, at a ratio of their mean powers (the speech's measured where it sounds), and silence filled too.</summary>
    /// <param name="decibels">Signal to noise ratio, dB; infinity for no noise.</param>
    /// <param name="lead">Seconds of fan alone before and after.</param>
    public static PcmAudio Behind(PcmAudio speech, double decibels, int seed, double lead = 0.4)
    {
        var pad = (int)(lead * speech.Rate);
        var samples = new short[speech.Samples.Length + (2 * pad)];
        speech.Samples.CopyTo(samples, pad);
        if (double.IsPositiveInfinity(decibels))
        {
            return new(samples, speech.Rate);
        }

        var noise = Of(samples.Length, speech.Rate, seed);
        var gain = Active(speech) / Root(noise) / Math.Pow(10, decibels / 20);
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] = (short)Math.Clamp(samples[i] + (gain * noise[i]), short.MinValue, short.MaxValue);
        }

        return new(samples, speech.Rate);
    }

    /// <summary>The fan alone.</summary>
    public static PcmAudio Alone(double seconds, double loudness, int seed)
    {
        var noise = Of((int)(seconds * PcmAudio.HearingRate), PcmAudio.HearingRate, seed);
        var gain = loudness / Root(noise);
        return new([.. noise.Select(n => (short)Math.Clamp(n * gain, short.MinValue, short.MaxValue))], PcmAudio.HearingRate);
    }

    private static double[] Of(int count, int rate, int seed)
    {
        var random = new Random(seed);
        var noise = new double[count];
        var (low, mid, phase) = (0.0, 0.0, random.NextDouble() * Math.Tau);
        for (var i = 0; i < count; i++)
        {
            var white = (random.NextDouble() * 2) - 1;
            low = (0.985 * low) + (0.08 * white);
            mid = (0.80 * mid) + (0.02 * white);
            var turn = (Math.Tau * BladePassHertz * i / rate) + phase;
            var hum = (0.05 * Math.Sin(turn)) + (0.03 * Math.Sin(2 * turn)) + (0.02 * Math.Sin(3 * turn)) + (0.01 * Math.Sin(5 * turn));
            // The blades make the rush swell and fall a little.
            noise[i] = ((low + mid) * (1 + (0.15 * Math.Sin(turn / 4)))) + hum + (0.002 * white);
        }

        return noise;
    }

    private static double Root(double[] noise) => Math.Sqrt(noise.Average(n => n * n));

    // Speech level over the frames that sound: silence around it must not make the noise seem louder.
    private static double Active(PcmAudio speech)
    {
        var frames = speech.Samples.Chunk(speech.Rate / 50).Select(f => f.Average(s => (double)s * s)).ToList();
        var floor = frames.Max() / 1000;
        return Math.Sqrt(frames.Where(f => f > floor).Average());
    }
}
