using System.Collections.Immutable;
using Assistant.Trade.Quantities;
using UnitsNet;

namespace Assistant.Trade.Regulations;

/// <summary>All that the rules of a place say of an appliance on a day. Never the last word: every finding ends with its reminder.</summary>
public static class Compliance
{
    /// <summary>The findings of every rule that applies, rule by rule.</summary>
    /// <param name="asOf">The day of the question; later events are left out.</param>
    /// <exception cref="UnknownSubstanceException">A component of the refrigerant is not known, so that nothing can be said.</exception>
    public static ImmutableArray<RegulationFinding> Of(Appliance appliance, IReadOnlyCollection<ServiceEvent> events, Jurisdiction jurisdiction, LeakRateMethod method, DateOnly asOf) =>
    [
        .. RegulationLibrary.For(appliance, jurisdiction, asOf).SelectMany(rule => rule switch
        {
            LeakRepairRegulation repair => LeakRepairFindings.Of(appliance, events, repair, method, asOf),
            LeakDetectionRegulation detection => Detection(appliance, detection),
            LeakCheckRegulation checks => LeakCheckFindings.Of(appliance, events, checks, asOf),
            ServiceGasRegulation gas => ServiceGas(appliance, gas, asOf),
            _ => throw new NotSupportedException($"no findings are known for {rule.GetType().Name}"),
        }),
    ];

    /// <summary>One finding a rule where a facility's appliances are reckoned by more than one method; the rules ask for one.</summary>
    public static ImmutableArray<RegulationFinding> OfFacility(IReadOnlyCollection<(Appliance Appliance, LeakRateMethod Method)> appliances, Jurisdiction jurisdiction, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(appliances);
        return
        [
            .. appliances
                .SelectMany(a => RegulationLibrary.For(a.Appliance, jurisdiction, asOf).OfType<LeakRepairRegulation>(), (a, rule) => (a.Method, rule))
                .GroupBy(p => p.rule, p => p.Method)
                .Where(g => g.Distinct().Count() > 1)
                .Select(g => new RegulationFinding(RegulationCode.OneMethodForTheFacility, g.Key, g.Key.LeakRate.Paragraph, null)),
        ];
    }

    private static ImmutableArray<RegulationFinding> Detection(Appliance appliance, LeakDetectionRegulation rule) => appliance.HasLeakDetection
        ? []
        : [new(RegulationCode.LeakDetectionBy, rule, rule.Paragraph, rule.DueFor(appliance), ("limit", new Amount(Mass.FromPounds(rule.FullChargeFromPounds).Kilograms, Dimension.Mass)))];

    private static ImmutableArray<RegulationFinding> ServiceGas(Appliance appliance, ServiceGasRegulation rule, DateOnly asOf) => rule.BanFor(appliance, asOf) is not { } ban
        ? []
        :
        [
            new(
                RegulationCode.VirginGasBanned,
                rule,
                ban.Paragraph,
                null,
                ("gwp", Amount.Ratio(FluorinatedCharge.Of(appliance)!.Gwp)),
                ("limit", Amount.Ratio(ban.GwpFrom)),
                ("reclaimed", asOf < ban.ReclaimedBannedFrom ? "allowed" : "banned"),
                ("reclaimed_until", RegulationFinding.Day(ban.ReclaimedBannedFrom.AddDays(-1)))),
        ];
}
