using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Numbers;

/// <summary>The words numbers are made of, by their number in the lexicon.</summary>
internal sealed class NumberVocabulary
{
    private readonly Dictionary<int, NumberWord> parts = [];

    public bool Add(int word, NumberWord part) => parts.TryAdd(word, part);

    public NumberWord? Find(Token token) =>
        token.Kind == TokenKind.Word && token.Word >= 0 && parts.TryGetValue(token.Word, out var part) ? part : null;

    public bool Is(Token token, NumberPart part) => Find(token)?.Part == part;

    /// <summary>Whether a spoken number can begin with this word wherever it stands.</summary>
    public bool Begins(Token token) => Find(token)?.Part is NumberPart.Zero or NumberPart.Digit or NumberPart.Teen or NumberPart.Tens or NumberPart.Hundred;
}
