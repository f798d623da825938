using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>Reads words.yaml: the everyday words that say nothing by themselves.</summary>
internal sealed class WordsPart(LexiconFile file, WordTable words)
{
    /// <summary>Words that are dropped before anything is read.</summary>
    public HashSet<int> Drop { get; } = [];

    /// <summary>Words after which "one" is somebody or something and no number.</summary>
    public HashSet<int> BeforeOne { get; } = [];

    public PhraseTable<bool> Fillers { get; } = new();

    /// <summary>Words that may stand beside a number without making it something else.</summary>
    public HashSet<int> Carriers { get; } = [];

    public void Read()
    {
        file.AllowOnly("drop", "contractions", "before-one", "fillers", "carriers");
        foreach (var (word, _, _) in file.Words("contractions"))
        {
            words.KeepItsS(word);
        }

        Drop.UnionWith(file.Words("drop").Select(w => w.Word));
        foreach (var (phrase, _, _) in file.Phrases("fillers"))
        {
            Fillers.Add(phrase, true);
        }

        BeforeOne.UnionWith(file.Words("before-one").Select(w => w.Word));
        Carriers.UnionWith(file.Words("carriers").Select(w => w.Word));
    }
}
