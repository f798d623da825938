namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>Reads leaks.yaml: the words before the place of a leak. The places are only for who must know before what may be said: any words may follow.</summary>
internal sealed class LeaksPart(LexiconFile file)
{
    public PhraseTable<bool> Openings { get; } = new();

    public void Read()
    {
        file.AllowOnly("leak", "places");
        foreach (var (phrase, _, _) in file.Phrases("leak"))
        {
            Openings.Add(phrase, true);
        }
    }
}
