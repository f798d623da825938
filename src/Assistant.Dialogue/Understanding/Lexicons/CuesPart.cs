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
