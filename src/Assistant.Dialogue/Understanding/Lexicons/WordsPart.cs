namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>Reads words.yaml: the everyday words that say nothing by themselves.</summary>
internal sealed class WordsPart(LexiconFile file)
{
    /// <summary>Words that are dropped before anything is read.</summary>
    public HashSet<int> Drop { get; } = [];

    public PhraseTable<bool> Fillers { get; } = new();

    /// <summary>Words that may stand beside a number without making it something else.</summary>
    public HashSet<int> Carriers { get; } = [];

    public void Read()
    {
        file.AllowOnly("drop", "fillers", "carriers");
        Drop.UnionWith(file.Words("drop").Select(w => w.Word));
        foreach (var (phrase, _, _) in file.Phrases("fillers"))
        {
            Fillers.Add(phrase, true);
        }

        Carriers.UnionWith(file.Words("carriers").Select(w => w.Word));
    }
}
