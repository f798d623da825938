namespace Assistant.Dialogue.Understanding.Text;

/// <summary>The lexicon's numbers of the signs and few words that the grammar itself turns on.</summary>
internal sealed class Signs(WordTable words)
{
    public int Dash { get; } = words.NumberOf("-");

    public int Slash { get; } = words.NumberOf("/");

    public int Plus { get; } = words.NumberOf("+");

    public int PlusMinus { get; } = words.NumberOf("±");

    public int Dollar { get; } = words.NumberOf("$");

    public int Equal { get; } = words.NumberOf("=");
}
