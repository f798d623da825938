using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding.Text;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>Reads words.yaml: the everyday words that say nothing by themselves.</summary>
internal sealed class WordsPart(LexiconFile file, WordTable words)
{
    /// <summary>Words that are dropped before anything is read.</summary>
    public HashSet<int> Drop { get; } = [];

    /// <summary>Words after which "one" is somebody or something and no number.</summary>
    public HashSet<int> BeforeOne { get; } = [];

    /// <summary>Before an instrument that goes by a name of its own: "my", "the".</summary>
    public HashSet<int> Own { get; } = [];

    /// <summary>Before those, behind a reading: "on", "with".</summary>
    public HashSet<int> ReadOn { get; } = [];

    public PhraseTable<bool> Fillers { get; } = new();

    /// <summary>Words that may stand beside a number without making it something else.</summary>
    public HashSet<int> Carriers { get; } = [];

    public void Read()
    {
        file.AllowOnly("drop", "short-forms", "own", "read-on", "contractions", "before-one", "fillers", "carriers");
        foreach (var (written, at, entry) in file.Entries("short-forms"))
        {
            if ((entry as YamlScalarNode)?.Value is not { Length: > 0 } meant || !words.Spell(written, meant))
            {
                file.Report(DefectKind.BadValue, at, "short-forms", $"'{written}' is no short form of a word that is used");
            }
        }

        foreach (var (word, _, _) in file.Words("contractions"))
        {
            words.KeepItsS(word);
        }

        Own.UnionWith(file.Words("own").Select(w => w.Word));
        ReadOn.UnionWith(file.Words("read-on").Select(w => w.Word));
        Drop.UnionWith(file.Words("drop").Select(w => w.Word));
        foreach (var (phrase, _, _) in file.Phrases("fillers"))
        {
            Fillers.Add(phrase, true);
        }

        BeforeOne.UnionWith(file.Words("before-one").Select(w => w.Word));
        Carriers.UnionWith(file.Words("carriers").Select(w => w.Word));
    }
}
