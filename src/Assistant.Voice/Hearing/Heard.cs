namespace Assistant.Voice.Hearing;

/// <summary>What became of an utterance.</summary>
public enum HeardKind
{
    /// <summary>Words of the grammar, and the sound fits them.</summary>
    Words,

    /// <summary>Too short or too quiet to be speech.</summary>
    Noise,

    /// <summary>Speech, but nothing that was listened for.</summary>
    NotForUs,
}

/// <summary>An utterance as it was heard.</summary>
/// <param name="Words">The words of the grammar that fit best; also where the gate kept them out, for measures; null where nothing fits.</param>
/// <param name="Fit">How much worse the words fit than free speech sounds do, per 10 ms frame: 0 is as good, lower is worse.</param>
/// <param name="Margin">How much better than the best of the other side, per frame, where two sides were compared; 0 where the other side came to nothing; otherwise null.</param>
/// <param name="Asked">The best of what was asked for, where something nobody asked for fits better; otherwise null.</param>
public sealed record Heard(HeardKind Kind, string? Words, double Fit, double? Margin = null, Heard? Asked = null)
{
    public static Heard Nothing { get; } = new(HeardKind.Noise, null, double.NegativeInfinity);

    /// <summary>The words, but only where they may be acted on.</summary>
    public string? Accepted => Kind == HeardKind.Words ? Words : null;
}
