using System.Collections.Immutable;
using System.Globalization;
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
/// and on why refrigerant moved, where that was said: what is not said to be seasonal, a first charge or a retrofit's counts as leaked, and
/// seasonal is only what was taken out for the season before.
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
    /// <param name="work">The repairs, tests and inspections on record: they set the dates, and where the rolling average begins.</param>
    /// <param name="units">Where the asset names no jurisdiction, a site in US units is taken to be in the United States; no other is guessed.</param>
    /// <param name="asOf">The day of the question; what came later is left out.</param>
    public static LeakAccount? Of(Asset asset, Mass? fullCharge, Refrigerant? refrigerant, IEnumerable<RecordedUse> uses, LeakWork work, UnitSystem units, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(asset);
        ArgumentNullException.ThrowIfNull(work);
        if (fullCharge is not { Value: > 0 } charge || refrigerant is null)
        {
            return null;
        }

        var services = LeakServices.Of(asset.Id, uses, work).AddRange(work.Events).RemoveAll(s => s.On > asOf);
        var appliance = ApplianceDetails.Of(asset, refrigerant, charge);
        var place = PlaceOf(asset, units);
        var rule = place is null ? null : RuleOf(appliance, place.Value, asOf);
        var terms = LastOf(LeakRateMethod.Annualising, rule?.LeakRate) is null ? null : rule?.LeakRate;
        if (LastOf(LeakRateMethod.Annualising, terms) is not { } annualised || LastOf(LeakRateMethod.Rolling, terms) is not { } rolling)
        {
            return null;
        }

        var findings = place is null ? [] : Enum.GetValues<LeakRateMethod>().Select(method => Find(appliance, services, place.Value, method, asOf)).ToArray();
        return new(
            new(
                "report.leak-rate",
                ("added", Weight(annualised.Added)),
                ("on", Day(annualised.On)),
                ("charge", Weight(charge)),
                ("annualised", Amount.Ratio(annualised.Rate.DecimalFractions)),
                ("rolling", Amount.Ratio(rolling.Rate.DecimalFractions))),
            Worked(annualised, rolling, charge),
            [
                .. ApplianceDetails.UseOf(asset) is null ? [new Reason("report.leak-use-assumed")] : Array.Empty<Reason>(),
                .. terms?.AdditionsCountFrom is { } from && services.OfType<RefrigerantAdded>().Any(a => a.On < from) ? [new Reason("report.leak-counts-from", ("from", Day(from)), ("source", terms.Paragraph))] : Array.Empty<Reason>(),
                .. ByMethod(findings),
            ],
            [.. findings.SelectMany(f => f).Select(f => f.Reminder).DistinctBy(Text).DefaultIfEmpty(new Reason("report.leak-check-text"))]);

        ReckonedLeakRate? LastOf(LeakRateMethod method, LeakRateTerms? by) => LeakRateCourse.Reckoned(charge, services, by, method, asOf).LastOrDefault();
    }

    private static Reason Worked(ReckonedLeakRate annualised, ReckonedLeakRate rolling, Mass charge) => new(
        rolling.ProvenOn is null ? "report.leak-workings" : "report.leak-workings-since",
        [
            ("added", Weight(annualised.Added)),
            ("charge", Weight(charge)),
            ("days", Math.Min(annualised.DaysSinceLastAddition, AnnualLeakRate.Year).ToString(CultureInfo.InvariantCulture)),
            ("sum", Weight(rolling.AddedWithin)),
            .. rolling.ProvenOn is { } proven ? [("proven", Day(proven))] : ImmutableArray<ReasonPart>.Empty,
        ]);

    // What both methods say is said once; a rule asks for one method at all appliances of a site, and does not say which.
    private static IEnumerable<Reason> ByMethod(ImmutableArray<RegulationFinding>[] findings)
    {
        var said = findings.Select(f => f.Select(x => x.Says).DistinctBy(Text).ToList()).ToList();
        if (said.Count == 0)
        {
            return [];
        }

        var both = said[0].Where(r => said[1].Exists(o => Text(o) == Text(r))).ToList();
        return [.. both, .. Alone("report.leak-by-annualising", said[0]), .. Alone("report.leak-by-rolling", said[1])];

        IEnumerable<Reason> Alone(string heading, List<Reason> own) =>
            own.FindAll(r => !both.Exists(b => Text(b) == Text(r))) is { Count: > 0 } alone ? [new Reason(heading), .. alone] : [];
    }

    private static LeakRepairRegulation? RuleOf(Appliance appliance, Jurisdiction place, DateOnly asOf)
    {
        try
        {
            return RegulationLibrary.For(appliance, place, asOf).OfType<LeakRepairRegulation>().FirstOrDefault();
        }
        catch (UnknownSubstanceException)
        {
            return null;
        }
    }

    private static ImmutableArray<RegulationFinding> Find(Appliance appliance, ImmutableArray<ServiceEvent> services, Jurisdiction place, LeakRateMethod method, DateOnly asOf)
    {
        try
        {
            return Compliance.Of(appliance, services, place, method, asOf);
        }
        catch (UnknownSubstanceException)
        {
            return [];
        }
    }

    private static Jurisdiction? PlaceOf(Asset asset, UnitSystem units) => asset.Details.GetValueOrDefault(JurisdictionDetail)?.ToUpperInvariant() switch
    {
        "US" => Jurisdiction.UnitedStates,
        "EU" => Jurisdiction.EuropeanUnion,
        null when units == UnitSystem.Us => Jurisdiction.UnitedStates,
        _ => null,
    };

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static Amount Weight(Mass mass) => new(mass.Kilograms, Dimension.Mass);

    private static string Text(Reason reason) => reason.Key + string.Join('|', reason.Parts);
}
