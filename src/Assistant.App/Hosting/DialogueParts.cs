using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Rules;

namespace Assistant.App.Hosting;

/// <summary>The dialogue made from its files: the sentences, and the engine that takes turns.</summary>
public sealed record DialogueParts(PhraseBook Phrases, ITurnEngine Engine, Understander Understander, WalkLibrary Walks)
{
    /// <exception cref="Commands.CommandFailure">A file beside the program can not be read.</exception>
    /// <exception cref="Dialogue.Files.DialogDataException">A file has mistakes.</exception>
    public static DialogueParts Load()
    {
        var files = DialogFiles.Read("walks");
        var lexicon = Task.Run(() => Lexicon.Load(DialogFiles.Read("lexicon"), files));
        var phrases = PhraseBook.Load(DialogFiles.Read("phrases"));
        var words = ShortWords.Load(DialogFiles.Read("words").Single());
        var walks = WalkLibrary.Load(files, phrases);
        var understander = new Understander(lexicon.GetAwaiter().GetResult());
        return new(phrases, new TurnEngine(phrases, words, walks, understander.Understand, Assessor.Assess, new QuestionAnswerer(phrases).Answer), understander, walks);
    }
}
