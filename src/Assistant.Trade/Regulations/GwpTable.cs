using System.Collections.Frozen;
using System.Collections.Immutable;
using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Regulations;

/// <summary>Global warming potentials over 100 years. A mixture's is the mass-weighted mean of its components'.</summary>
public sealed class GwpTable
{
    private readonly FrozenDictionary<string, GwpComponent> components;

    internal GwpTable(GwpFile file)
    {
        Source = file.Source;
        Basis = file.Basis;
        DateRead = file.DateRead;
        components = file.Components
            .SelectMany(c => c.AlsoCalled.Prepend(c.Name), (component, name) => (name, component))
            .ToFrozenDictionary(p => p.name, p => p.component, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>The table of shared/regulations/gwp.json.</summary>
    public static GwpTable Shipped => RegulationLibrary.Gwp;

    public string Source { get; }

    public SourceBasis Basis { get; }

    public DateOnly DateRead { get; }

    /// <summary>The mixture's global warming potential by the list that holds there; the lists differ for a few components only.</summary>
    /// <exception cref="UnknownSubstanceException">A component is not in the table.</exception>
    public double Of(ImmutableArray<RefrigerantComponent> composition, Jurisdiction jurisdiction) => composition.Sum(c =>
    {
        var found = Find(c.Name);
        return c.MassFraction * (jurisdiction == Jurisdiction.EuropeanUnion ? found.EuGwp ?? found.Gwp : found.Gwp);
    });

    /// <summary>True where any component is of that kind.</summary>
    /// <exception cref="UnknownSubstanceException">A component is not in the table.</exception>
    public bool Contains(ImmutableArray<RefrigerantComponent> composition, SubstanceKind kind) => composition.Any(c => Find(c.Name).Kind == kind);

    /// <summary>True for a hydrofluorocarbon or a mixture with one, and for what stands in for them above this value, by the list of the United States.</summary>
    public bool IsHfcOrSubstituteOver(ImmutableArray<RefrigerantComponent> composition, double gwp) =>
        Contains(composition, SubstanceKind.Hfc)
        || (!Contains(composition, SubstanceKind.OzoneDepleting) && Limits.Over(Of(composition, Jurisdiction.UnitedStates), gwp));

    private GwpComponent Find(string name) => components.GetValueOrDefault(name) ?? throw new UnknownSubstanceException(name);
}

internal sealed record GwpFile(string Title, string Source, SourceBasis Basis, DateOnly DateRead, string Note, ImmutableArray<GwpComponent> Components);

/// <param name="EuGwp">The European annex's value where it departs.</param>
internal sealed record GwpComponent(string Name, ImmutableArray<string> AlsoCalled, SubstanceKind Kind, double Gwp, double? EuGwp);
