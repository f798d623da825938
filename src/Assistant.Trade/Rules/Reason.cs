using System.Collections.Immutable;
using Assistant.Trade.Quantities;

namespace Assistant.Trade.Rules;

/// <summary>
/// One reason for or against a fault: the key of its sentence in the phrase book and the numbers and words that fill it.
/// The rule core holds no sentences, so a reason is said in the units and the length its hearer wants.
/// </summary>
public sealed record Reason(string Key, params ImmutableArray<ReasonPart> Parts);

/// <summary>A named number or word of a reason.</summary>
public sealed record ReasonPart(string Name, Amount? Amount, string? Word)
{
    public static implicit operator ReasonPart((string Name, Amount Amount) part) => new(part.Name, part.Amount, null);
    public static implicit operator ReasonPart((string Name, string Word) part) => new(part.Name, null, part.Word);

    public static ReasonPart ToReasonPart((string Name, Amount Amount) part) => part;
}
