using Assistant.Dialogue.Replies;
using Assistant.Trade.Quantities;

namespace Assistant.Channels.Text;

/// <summary>The short words of a text message: a fact by the letters one types for it.</summary>
internal sealed class TextWords(PhraseBook book)
{
    public string Caution { get; } = book.Say("text.caution", UnitSystem.Us).Brief + " ";

    public string Also { get; } = book.Say("text.also", UnitSystem.Us).Brief + " ";

    /// <summary>A caution in the fewest words it is still understood in.</summary>
    public string Warning(SpokenCaution caution)
    {
        var key = "text.caution." + caution.Code;
        return book.Has(key) ? book.Say(key, UnitSystem.Us).Brief : caution.Text.Brief;
    }

    /// <summary>"suc" for the suction pressure; the fact's short name where it has no shorter one.</summary>
    public string Label(string fact)
    {
        var key = "text.fact." + fact;
        return book.Has(key) ? book.Say(key, UnitSystem.Us).Brief : book.Word(fact, brief: true);
    }
}
