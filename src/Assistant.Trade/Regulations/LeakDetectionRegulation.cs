using System.Collections.Immutable;

namespace Assistant.Trade.Regulations;

/// <summary>When an automatic leak detection system is compulsory (40 CFR 84.108).</summary>
public sealed record LeakDetectionRegulation : Regulation
{
    public required string Paragraph { get; init; }

    public required ImmutableArray<ApplianceUse> Uses { get; init; }

    public required double GwpOver { get; init; }

    /// <summary>At this full charge and above.</summary>
    public required double FullChargeFromPounds { get; init; }

    /// <summary>Appliances installed before this day are left out.</summary>
    public required DateOnly InstalledFrom { get; init; }

    /// <summary>From this day an appliance counts as new and has <see cref="NewWithinDays"/> from its installation.</summary>
    public required DateOnly NewFrom { get; init; }

    public required int NewWithinDays { get; init; }

    /// <summary>The day by which the others have it.</summary>
    public required DateOnly ExistingBy { get; init; }

    /// <inheritdoc/>
    /// <remarks>An appliance whose day of installation is not known is taken in.</remarks>
    public override bool AppliesTo(Appliance appliance, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(appliance);
        return IsValidOn(day)
            && Uses.Contains(appliance.Use)
            && Limits.AtLeast(appliance.FullCharge.Pounds, FullChargeFromPounds)
            && (appliance.InstalledOn is not { } installed || installed >= InstalledFrom)
            && GwpTable.Shipped.IsHfcOrSubstituteOver(appliance.Composition, GwpOver);
    }

    /// <summary>The day by which this appliance has it.</summary>
    public DateOnly DueFor(Appliance appliance)
    {
        ArgumentNullException.ThrowIfNull(appliance);
        return appliance.InstalledOn is { } installed && installed >= NewFrom ? installed.AddDays(NewWithinDays) : ExistingBy;
    }
}
