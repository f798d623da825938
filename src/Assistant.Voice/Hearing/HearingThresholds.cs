namespace Assistant.Voice.Hearing;

/// <summary>
/// Where hearing draws its lines. The figures were set on synthetic voices, in part with the phrases they are tested on
/// (tests/voice/RESULTS.md says which); a firm that records its own technicians may set its own.
/// </summary>
public sealed record HearingThresholds
{
    /// <summary>The least <see cref="Heard.Fit"/> of words that are taken, log units per frame.</summary>
    public double LeastFit { get; init; } = -15;

    /// <summary>
    /// The same where only its name and a call for help are listened for: of the calibration its name fits no worse than -10.8, near a
    /// fan too, and other talk no better than -40; this is the middle.
    /// </summary>
    public double LeastNameFit { get; init; } = -25;

    /// <summary>The shortest sound that is taken for speech.</summary>
    public TimeSpan LeastSpeech { get; init; } = TimeSpan.FromMilliseconds(180);

    /// <summary>The least mean level of speech, in sample steps of 16-bit sound: below, it is a hiss or a far voice.</summary>
    public double LeastLoudness { get; init; } = 60;
}
