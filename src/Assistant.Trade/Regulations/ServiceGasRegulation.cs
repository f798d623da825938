using System.Collections.Immutable;

namespace Assistant.Trade.Regulations;

/// <summary>Gases that may no longer be used to service equipment (Regulation (EU) 2024/573, article 13).</summary>
public sealed record ServiceGasRegulation : Regulation
{
    public required ImmutableArray<ServiceGasBan> Bans { get; init; }

    public override bool AppliesTo(Appliance appliance, DateOnly day) => BanFor(appliance, day) is not null;

    /// <summary>The ban on virgin gas that holds for this appliance's own refrigerant on this day, or null.</summary>
    public ServiceGasBan? BanFor(Appliance appliance, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(appliance);
        if (!IsValidOn(day) || FluorinatedCharge.Of(appliance) is not { } charge)
        {
            return null;
        }

        return Bans.FirstOrDefault(b => b.Uses.Contains(appliance.Use) && day >= b.Since && Limits.AtLeast(charge.Gwp, b.GwpFrom));
    }
}

/// <param name="GwpFrom">At this global warming potential and above.</param>
/// <param name="Since">The first day virgin gas is banned.</param>
/// <param name="ReclaimedBannedFrom">The first day reclaimed or recycled gas is banned too.</param>
public sealed record ServiceGasBan(string Paragraph, ImmutableArray<ApplianceUse> Uses, double GwpFrom, DateOnly Since, DateOnly ReclaimedBannedFrom);
