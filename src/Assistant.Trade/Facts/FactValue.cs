using Assistant.Trade.Quantities;

namespace Assistant.Trade.Facts;

/// <summary>What was found for one fact: a <see cref="Reading"/> or an <see cref="Observation"/>.</summary>
public abstract record FactValue(Fact Fact);

/// <summary>A number as it was said, with its unit.</summary>
public sealed record Reading(Fact Fact, double Value, UnitOfMeasure Unit) : FactValue(Fact)
{
    /// <summary>The value in the canonical unit of its dimension; an absolute pressure by the standard atmosphere.</summary>
    public double Canonical => Unit.ToCanonical(Value);

    public Amount Amount => new(Canonical, Unit.Dimension);
}

/// <summary>A choice or a yes/no: one of the fact's <see cref="Fact.Choices"/>, or a refrigerant's designation.</summary>
public sealed record Observation(Fact Fact, string Value) : FactValue(Fact);
