namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>What a small word does to its neighbours.</summary>
[Flags]
internal enum Cue
{
    None = 0,
    Correction = 1 << 0,
    Not = 1 << 1,
    Past = 1 << 2,
    Now = 1 << 3,
    Range = 1 << 4,
    Between = 1 << 5,
    Bound = 1 << 6,
    BoundAfter = 1 << 7,
    Relative = 1 << 8,
    OverAmbient = 1 << 9,
    SignOpen = 1 << 10,
    Vague = 1 << 11,
    Decade = 1 << 12,
    Contents = 1 << 13,
    Label = 1 << 14,
    Clock = 1 << 15,
    Count = 1 << 16,
    Elapsed = 1 << 17,
    Ago = 1 << 18,

    /// <summary>"dropped 5 pounds": by how much, not where it stands.</summary>
    Change = 1 << 19,

    /// <summary>"10 degrees warm": off from where it should be.</summary>
    Deviation = 1 << 20,

    /// <summary>"should be 22", "last time": not what is read now.</summary>
    NotNow = 1 << 21,

    /// <summary>"cut in is 22": of a thing that is none of the facts.</summary>
    Elsewhere = 1 << 22,

    /// <summary>"I meant": what was said before was wrong.</summary>
    Mistaken = 1 << 23,
}

/// <summary>Reads cues.yaml: the small words that correct, deny, bound, span or leave open.</summary>
internal sealed class CuesPart(LexiconFile file)
{
    private static readonly (string Field, Cue Cue)[] Fields =
    [
        ("correction", Cue.Correction), ("not", Cue.Not), ("past", Cue.Past), ("now", Cue.Now), ("range", Cue.Range), ("between", Cue.Between),
        ("bound", Cue.Bound), ("bound-after", Cue.BoundAfter), ("relative", Cue.Relative), ("over-ambient", Cue.OverAmbient),
        ("sign-open", Cue.SignOpen), ("vague", Cue.Vague), ("decades", Cue.Decade), ("contents", Cue.Contents), ("labels", Cue.Label),
        ("clock", Cue.Clock), ("counts", Cue.Count), ("elapsed", Cue.Elapsed), ("ago", Cue.Ago),
        ("change", Cue.Change), ("deviation", Cue.Deviation), ("not-now", Cue.NotNow), ("elsewhere", Cue.Elsewhere), ("mistaken", Cue.Mistaken),
    ];

    public PhraseTable<Cue> Cues { get; } = new();

    public void Read()
    {
        file.AllowOnly([.. Fields.Select(f => f.Field)]);
        foreach (var (field, cue) in Fields)
        {
            foreach (var (phrase, _, _) in file.Phrases(field))
            {
                Cues.Add(phrase, cue);
            }
        }
    }
}
