namespace Assistant.Voice.Hearing.Native;

/// <summary>What a search made of an utterance.</summary>
/// <param name="Words">Null where the sound does not fit the grammar at all.</param>
internal sealed record Decoded(string? Words, IReadOnlyList<DecodedSegment> Segments)
{
    /// <summary>The acoustic score summed over all words and fillers, in the decoder's log units; higher is a better fit.</summary>
    public double Score => Segments.Sum(s => (double)s.Score);

    /// <summary>Ten-millisecond frames.</summary>
    public int Frames => Segments.Count == 0 ? 0 : Segments[^1].Last + 1;

    /// <summary>Ten-millisecond frames of words.</summary>
    public int WordFrames => Segments.Where(s => !s.IsFiller).Sum(s => s.Frames);
}

/// <summary>A word or filler with its frames, both counted in.</summary>
internal readonly record struct DecodedSegment(string Word, int First, int Last, int Score)
{
    public int Frames => Last - First + 1;

    public bool IsFiller => Word.Length == 0 || Word[0] is '<' or '[' or '+' or '(';
}
