namespace Assistant.Voice.Sound;

/// <summary>Mono sound as signed 16-bit samples.</summary>
/// <param name="Rate">Samples a second, in Hz.</param>
public sealed record PcmAudio(short[] Samples, int Rate)
{
    /// <summary>The rate the recogniser's acoustic model was trained at, Hz.</summary>
    public const int HearingRate = 16_000;

    public TimeSpan Duration => TimeSpan.FromSeconds((double)Samples.Length / Rate);

    /// <summary>The same sound at another rate: averaged over the new sample's span going down, interpolated going up.</summary>
    public PcmAudio At(int rate)
    {
        if (rate == Rate)
        {
            return this;
        }

        var samples = new short[(int)((long)Samples.Length * rate / Rate)];
        var step = (double)Rate / rate;
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] = step > 1 ? Averaged(i * step, step) : Between(i * step);
        }

        return new(samples, rate);
    }

    /// <summary>A stretch of the sound; what lies outside it is left away.</summary>
    public PcmAudio Slice(int from, int to)
    {
        var (start, end) = (Math.Clamp(from, 0, Samples.Length), Math.Clamp(to, 0, Samples.Length));
        return new(Samples[start..Math.Max(start, end)], Rate);
    }

    /// <summary>The root mean square of the samples, in sample steps; 0 for no sound.</summary>
    public double Loudness()
    {
        var sum = 0.0;
        foreach (var sample in Samples)
        {
            sum += (double)sample * sample;
        }

        return Samples.Length == 0 ? 0 : Math.Sqrt(sum / Samples.Length);
    }

    private short Between(double at)
    {
        var before = (int)at;
        var after = Math.Min(before + 1, Samples.Length - 1);
        return (short)Math.Round(Samples[before] + ((at - before) * (Samples[after] - Samples[before])));
    }

    // The mean over the span is a plain low pass: what lies above half the new rate is weakened before it can fold back.
    private short Averaged(double from, double span)
    {
        var (sum, weight) = (0.0, 0.0);
        for (var i = (int)from; i < Math.Min(from + span, Samples.Length); i++)
        {
            var part = Math.Min(i + 1, from + span) - Math.Max(i, from);
            sum += part * Samples[i];
            weight += part;
        }

        return (short)Math.Round(sum / weight);
    }
}
