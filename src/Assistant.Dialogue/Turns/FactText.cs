using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>A fact's value as it is repeated.</summary>
internal static class FactText
{
    /// <summary>A reading as it was said; an observation as its stored word, which the phrase book says in its own way.</summary>
    public static string Of(FactValue value) => value is Reading reading ? AmountText.Written(reading) : ((Observation)value).Value;
}
