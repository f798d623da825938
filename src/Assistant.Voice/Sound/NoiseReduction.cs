using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace Assistant.Voice.Sound;

/// <summary>
/// Takes a steady noise such as a fan's out of one utterance: the log-spectral amplitude estimator (Y. Ephraim and D. Malah, IEEE Trans.
/// Acoustics, Speech and Signal Processing 33(2), 443-445, 1985), with the noise measured where the utterance is quietest. Pure: the
/// same sound always gives the same result.
/// </summary>
public static class NoiseReduction
{
    /// <summary>32 ms at 16 kHz, a quarter of it a step.</summary>
    private const int FrameSamples = 512;
    private const int Step = FrameSamples / 4;
    private const int Bins = (FrameSamples / 2) + 1;

    /// <summary>Below this many bins (250 Hz at 16 kHz) a fan's hum says nothing about where speech pauses.</summary>
    private const int LowestSpeechBin = 8;

    /// <summary>The share of frames, the quietest, that the noise is measured over.</summary>
    private const int QuietPart = 5;
    private const int LeastQuietFrames = 4;

    /// <summary>How far the last frame's speech counts in a frame's ratio of speech to noise.</summary>
    private const double Smoothing = 0.95;
    private const double LeastRatio = 0.003;

    /// <summary>What is left of a bin that holds noise alone, in amplitude: a room that falls quite silent is none the recogniser knows.</summary>
    private const double LeastGain = 0.15;

    private static readonly double[] Window = [.. Enumerable.Range(0, FrameSamples).Select(i => Math.Sqrt(0.5 - (0.5 * Math.Cos(Math.Tau * i / FrameSamples))))];

    // Squared windows a quarter apart sum to two.
    private const double Overlap = 2;

    /// <summary>The sound without its steady noise; of the same length, and as it was where it is too short to measure any.</summary>
    public static PcmAudio Of(PcmAudio sound)
    {
        ArgumentNullException.ThrowIfNull(sound);
        var count = ((sound.Samples.Length - FrameSamples) / Step) + 1;
        if (sound.Samples.Length < FrameSamples || count < LeastQuietFrames * 2)
        {
            return sound;
        }

        var frames = Enumerable.Range(0, count).Select(f => Spectrum(sound.Samples.AsSpan(f * Step, FrameSamples))).ToArray();
        Reduce(frames, Noise(frames));
        return sound with { Samples = Joined(frames, sound.Samples) };
    }

    private static Complex[] Spectrum(ReadOnlySpan<short> samples)
    {
        var frame = new Complex[FrameSamples];
        for (var i = 0; i < FrameSamples; i++)
        {
            frame[i] = samples[i] * Window[i];
        }

        Fourier.Forward(frame, FourierOptions.Matlab);
        return frame;
    }

    // The mean power a bin in the quietest frames; never nothing, so that digital silence divides as well.
    private static double[] Noise(Complex[][] frames)
    {
        var quietest = frames.OrderBy(f => Enumerable.Range(LowestSpeechBin, Bins - LowestSpeechBin).Sum(k => Power(f[k])))
            .Take(Math.Max(LeastQuietFrames, frames.Length / QuietPart)).ToArray();
        return [.. Enumerable.Range(0, Bins).Select(k => quietest.Average(f => Power(f[k])) + 1)];
    }

    private static void Reduce(Complex[][] frames, double[] noise)
    {
        var before = new double[Bins];
        foreach (var frame in frames)
        {
            for (var k = 0; k < Bins; k++)
            {
                var power = Power(frame[k]);
                var posterior = power / noise[k];
                var prior = Math.Max(LeastRatio, (Smoothing * before[k] / noise[k]) + ((1 - Smoothing) * Math.Max(0, posterior - 1)));
                var gain = Math.Clamp(Gain(prior, posterior), LeastGain, 1);
                before[k] = gain * gain * power;
                frame[k] *= gain;
                if (k is > 0 and < FrameSamples / 2)
                {
                    frame[FrameSamples - k] = Complex.Conjugate(frame[k]);
                }
            }
        }
    }

    private static double Gain(double prior, double posterior)
    {
        var share = prior / (1 + prior);
        return share * Math.Exp(0.5 * ExponentialIntegral(Math.Max(1e-6, share * posterior)));
    }

    // E1 by Abramowitz and Stegun, Handbook of Mathematical Functions, 5.1.53 and 5.1.54: within 5e-5, which is 0.0002 dB here.
    private static double ExponentialIntegral(double x) => x <= 1
        ? -Math.Log(x) - 0.57721566 + (x * (0.99999193 + (x * (-0.24991055 + (x * (0.05519968 + (x * (-0.00976004 + (x * 0.00107857)))))))))
        : ((x * x) + (2.334733 * x) + 0.250621) / ((x * x) + (3.330657 * x) + 1.681534) * Math.Exp(-x) / x;

    private static short[] Joined(Complex[][] frames, short[] original)
    {
        var sum = new double[original.Length];
        for (var f = 0; f < frames.Length; f++)
        {
            Fourier.Inverse(frames[f], FourierOptions.Matlab);
            for (var i = 0; i < FrameSamples; i++)
            {
                sum[(f * Step) + i] += frames[f][i].Real * Window[i] / Overlap;
            }
        }

        return [.. sum.Select(s => (short)Math.Clamp(s, short.MinValue, short.MaxValue))];
    }

    private static double Power(Complex bin) => (bin.Real * bin.Real) + (bin.Imaginary * bin.Imaginary);
}
