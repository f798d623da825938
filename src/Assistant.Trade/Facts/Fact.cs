using System.Collections.Immutable;

namespace Assistant.Trade.Facts;

/// <summary>One thing a visit can know: a reading or an observation. Compared by reference; every instance stands in <see cref="FactCatalogue"/>.</summary>
public sealed class Fact
{
    internal Fact(string name, FactKind kind, Place place, params ImmutableArray<string> choices)
    {
        Index = created++;
        Name = name;
        Kind = kind;
        Place = place;
        Choices = kind == FactKind.YesNo ? ["yes", "no"] : choices;
    }

    private static int created;

    /// <summary>Its place in a <see cref="FactSet"/>.</summary>
    internal int Index { get; }

    /// <summary>snake_case, as the contract spells it.</summary>
    public string Name { get; }

    public FactKind Kind { get; }

    public Place Place { get; }

    /// <summary>The allowed values of a choice or yes/no fact; empty for a quantity, and for the refrigerant, whose choices are the library's.</summary>
    public ImmutableArray<string> Choices { get; }

    public bool IsQuantity => Kind is not (FactKind.Choice or FactKind.YesNo);

    public override string ToString() => Name;
}
