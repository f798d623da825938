using System.Collections.Immutable;
using Assistant.Records.Assets;
using Assistant.Records.Cylinders;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Regulations;
using Assistant.Trade.Rules;
using Assistant.Trade.Sums;
using UnitsNet;
using UnitSystem = Assistant.Trade.Quantities.UnitSystem;

namespace Assistant.Records.Reports.Model;

/// <summary>
/// What the equipment's leak rate is by both methods, and what the rules with dates say of it. Rests on the cylinders' weights
/// and on why refrigerant moved, where that was said: what is not said to be seasonal, a first charge or a retrofit's counts as leaked.
/// </summary>
/// <param name="Rate">The rate at the last addition, as the key of a sentence and its parts.</param>
/// <param name="Workings">The same as it is reckoned by hand, method by method.</param>
/// <param name="Findings">What the rules that apply say, each once.</param>
/// <param name="Reminders">To check the current text; never empty.</param>
public sealed record LeakAccount(Reason Rate, Reason Workings, ImmutableArray<Reason> Findings, ImmutableArray<Reason> Reminders)
{
    /// <summary>The detail of an asset that says whose law holds: us or eu.</summary>
    public const string JurisdictionDetail = "jurisdiction";

    /// <summary>The account, or null where the full charge, the refrigerant or an addition is not known.</summary>
    /// <param name="units">Where the asset names no jurisdiction, a site in US units is taken to be in the United States; no other is guessed.</param>
    /// <param name="asOf">The day of the question; what came later is left out.</param>
    public static LeakAccount? Of(Asset asset, Mass? fullCharge, Refrigerant? refrigerant, IEnumerable<RecordedUse> uses, UnitSystem units, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(asset);
        var services = Services(asset.Id, uses).Where(s => s.On <= asOf).ToList();
        var additions = services.OfType<RefrigerantAdded>().Where(a => a.Reason == AdditionReason.TopUp).GroupBy(a => a.On).OrderBy(g => g.Key)
            .Select(g => new RefrigerantAddition(g.Key, Mass.FromKilograms(g.Sum(a => a.Amount.Kilograms)))).ToList();
        if (fullCharge is not { Value: > 0 } charge || refrigerant is null || additions.Count == 0)
        {
            return null;
        }

        var last = additions[^1];
        // The first addition on record counts as a whole year.
        var days = additions.Count > 1 ? last.On.DayNumber - additions[^2].On.DayNumber : 365;
        var findings = PlaceOf(asset, units) is { } place ? Find(asset, refrigerant, charge, services, place, asOf) : [];
        return new(
            new(
                "report.leak-rate",
                ("added", Weight(last.Added)),
                ("on", last.On.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)),
                ("charge", Weight(charge)),
                ("annualised", Amount.Ratio(AnnualLeakRate.Annualising(last.Added, charge, days).DecimalFractions)),
                ("rolling", Amount.Ratio(AnnualLeakRate.Rolling(additions, charge, last.On, null).DecimalFractions))),
            Worked(additions, charge, days, last.On),
            [.. ApplianceDetails.UseOf(asset) is null ? [new Reason("report.leak-use-assumed")] : Array.Empty<Reason>(), .. findings.Select(f => f.Says).DistinctBy(Text)],
            [.. findings.Select(f => f.Reminder).DistinctBy(Text).DefaultIfEmpty(new Reason("report.leak-check-text"))]);
    }

    private static Reason Worked(List<RefrigerantAddition> additions, Mass charge, int days, DateOnly last) => new(
        "report.leak-workings",
        ("added", Weight(additions[^1].Added)),
        ("charge", Weight(charge)),
        ("days", Math.Min(days, 365).ToString(System.Globalization.CultureInfo.InvariantCulture)),
        ("sum", Weight(Mass.FromKilograms(additions.Where(a => a.On > last.AddDays(-365) && a.On <= last).Sum(a => a.Added.Kilograms)))));

    private static ImmutableArray<RegulationFinding> Find(Asset asset, Refrigerant refrigerant, Mass charge, List<ServiceEvent> services, Jurisdiction place, DateOnly asOf)
    {
        var appliance = ApplianceDetails.Of(asset, refrigerant, charge);
        try
        {
            return [.. Enum.GetValues<LeakRateMethod>().SelectMany(method => Compliance.Of(appliance, services, place, method, asOf))];
        }
        catch (UnknownSubstanceException)
        {
            return [];
        }
    }

    // One visit is one service: recovered for a repair and put back is not leaked. What is done for the season is a service of its own.
    private static IEnumerable<ServiceEvent> Services(string assetId, IEnumerable<RecordedUse> uses) => uses
        .Where(u => u.AssetId == assetId)
        .GroupBy(u => (u.VisitId, Reason: ApplianceDetails.ReasonOf(u.Used.Reason)))
        .Select(service => ServiceBalance.Of(assetId, CylinderBook.Of(service).Ledger.Entries, service.Key.Reason))
        .OfType<ServiceEvent>();

    private static Jurisdiction? PlaceOf(Asset asset, UnitSystem units) => asset.Details.GetValueOrDefault(JurisdictionDetail)?.ToUpperInvariant() switch
    {
        "US" => Jurisdiction.UnitedStates,
        "EU" => Jurisdiction.EuropeanUnion,
        null when units == UnitSystem.Us => Jurisdiction.UnitedStates,
        _ => null,
    };

    private static Amount Weight(Mass mass) => new(mass.Kilograms, Dimension.Mass);

    private static string Text(Reason reason) => reason.Key + string.Join('|', reason.Parts);
}
