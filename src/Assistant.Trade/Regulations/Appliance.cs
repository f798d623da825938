using System.Collections.Immutable;
using Assistant.Trade.Refrigerants;
using UnitsNet;

namespace Assistant.Trade.Regulations;

/// <summary>A refrigerant circuit as the leak rules see it.</summary>
/// <param name="Composition">The components of its refrigerant by mass.</param>
/// <param name="FullCharge">The charge for normal running.</param>
public sealed record Appliance(string AssetId, ImmutableArray<RefrigerantComponent> Composition, Mass FullCharge, ApplianceUse Use)
{
    /// <summary>Residential or light commercial air conditioning or heat pump, which some rules leave out.</summary>
    public bool IsResidentialOrLightCommercial { get; init; }

    /// <summary>Hermetically sealed, and labelled so.</summary>
    public bool IsHermeticallySealed { get; init; }

    /// <summary>A leak detection system that alerts the operator is installed.</summary>
    public bool HasLeakDetection { get; init; }

    /// <summary>Repairs need an industrial process to be shut down.</summary>
    public bool RepairNeedsProcessShutdown { get; init; }

    public DateOnly? InstalledOn { get; init; }
}
