using System.Collections.Immutable;
using Assistant.Trade.Quantities;

namespace Assistant.Trade.Refrigerants;

/// <summary>One refrigerant with its tables. Compared by reference: there is one instance a designation, in <see cref="RefrigerantLibrary"/>.</summary>
public sealed class Refrigerant
{
    private readonly Lazy<SaturationTable> saturation;
    private readonly Lazy<SuperheatedVapour> superheated;

    internal Refrigerant(RefrigerantSummary summary, Lazy<SaturationTable> saturation, Lazy<SuperheatedVapour> superheated)
    {
        Designation = summary.Designation;
        SafetyClass = summary.SafetyClass;
        Components = summary.Components;
        NormalBubblePoint = summary.NormalBubblePoint;
        NormalDewPoint = summary.NormalDewPoint;
        CriticalTemperature = summary.CriticalTemperature;
        this.saturation = saturation;
        this.superheated = superheated;
    }

    /// <summary>ASHRAE 34 designation as the contract spells it, such as R448A.</summary>
    public string Designation { get; }

    /// <summary>ASHRAE 34 safety group, recalled from memory: check the current standard before relying on it.</summary>
    public SafetyClass SafetyClass { get; }

    /// <summary>The components by mass; one for a pure fluid.</summary>
    public ImmutableArray<RefrigerantComponent> Components { get; }

    public bool IsBlend => Components.Length > 1;

    /// <summary>Bubble temperature at 101.325 kPa; null where the triple point lies above that pressure (R744).</summary>
    public CelsiusTemperature? NormalBubblePoint { get; }

    /// <summary>Dew temperature at 101.325 kPa; null where the triple point lies above that pressure (R744).</summary>
    public CelsiusTemperature? NormalDewPoint { get; }

    public CelsiusTemperature CriticalTemperature { get; }

    /// <summary>Bubble and dew points by temperature or pressure. Read from the embedded tables on first use.</summary>
    public SaturationTable Saturation => saturation.Value;

    /// <summary>Vapour above its dew point. Read from the embedded tables on first use.</summary>
    public SuperheatedVapour Superheated => superheated.Value;

    /// <summary>Where the figures come from: the header lines of the saturation table.</summary>
    public ImmutableArray<string> Provenance => Saturation.Provenance;

    public override string ToString() => Designation;
}

/// <summary>A component of a refrigerant and its share.</summary>
/// <param name="MassFraction">0 to 1.</param>
public sealed record RefrigerantComponent(string Name, double MassFraction);
