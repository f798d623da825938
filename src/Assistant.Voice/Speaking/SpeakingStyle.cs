namespace Assistant.Voice.Speaking;

/// <summary>How fast and how loud is spoken.</summary>
/// <param name="WordsPerMinute">From 90 to 240.</param>
/// <param name="Loudness">From 50 to 200; 100 is the voice's own.</param>
public sealed record SpeakingStyle(int WordsPerMinute = 155, int Loudness = 130)
{
    private const int Step = 25;

    public SpeakingStyle Slower => this with { WordsPerMinute = Math.Max(90, WordsPerMinute - Step) };

    public SpeakingStyle Faster => this with { WordsPerMinute = Math.Min(240, WordsPerMinute + Step) };

    public SpeakingStyle Louder => this with { Loudness = Math.Min(200, Loudness + Step) };

    /// <summary>About how long a text takes, from its letters and digits: a spelled digit is a word of its own.</summary>
    public TimeSpan Estimate(string spoken)
    {
        ArgumentNullException.ThrowIfNull(spoken);

        // 5.5 characters a word with its blank, as typing is counted, and a short breath at the end of each sentence.
        var words = spoken.Length / 5.5;
        var breaths = spoken.Count(c => c is '.' or '?' or '!' or ':' or ';');
        return TimeSpan.FromSeconds((words * 60 / WordsPerMinute) + (0.25 * breaths));
    }
}
