using System.Collections.Immutable;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Regulations;
using UnitsNet;

namespace Assistant.Trade.Tests.Regulations;

/// <summary>Invented appliances and the shipped rules by name.</summary>
internal static class RegulationScene
{
    public static LeakRepairRegulation OzoneRule { get; } = Rule<LeakRepairRegulation>("us-40-cfr-82-157");

    public static LeakRepairRegulation HfcRule { get; } = Rule<LeakRepairRegulation>("us-40-cfr-84-106");

    public static LeakDetectionRegulation DetectionRule { get; } = Rule<LeakDetectionRegulation>("us-40-cfr-84-108");

    public static LeakCheckRegulation EuChecks { get; } = Rule<LeakCheckRegulation>("eu-2024-573-art-5");

    public static ServiceGasRegulation EuServiceGas { get; } = Rule<ServiceGasRegulation>("eu-2024-573-art-13");

    public static T Rule<T>(string id) where T : Regulation => (T)RegulationLibrary.All.Single(r => r.Rule == id);

    public static ImmutableArray<RefrigerantComponent> Composition(string refrigerant) => RefrigerantLibrary.Find(refrigerant)!.Components;

    public static Appliance Pounds(string refrigerant, double pounds, ApplianceUse use = ApplianceUse.CommercialRefrigeration) =>
        new("invented", Composition(refrigerant), Mass.FromPounds(pounds), use);

    public static Appliance Kilograms(string refrigerant, double kilograms, ApplianceUse use = ApplianceUse.CommercialRefrigeration) =>
        new("invented", Composition(refrigerant), Mass.FromKilograms(kilograms), use);

    public static DateOnly Day(string day) => DateOnly.ParseExact(day, "yyyy-MM-dd");

    public static RefrigerantAdded Added(string day, double pounds, AdditionReason reason = AdditionReason.TopUp) => new(Day(day), Mass.FromPounds(pounds), reason);

    public static RefrigerantRemoved Removed(string day, double pounds, bool forTheSeason = true) => new(Day(day), Mass.FromPounds(pounds), forTheSeason);

    public static VerificationTested Initial(string day, bool passed = true) => new(Day(day), VerificationTest.Initial, passed);

    public static VerificationTested FollowUp(string day, bool passed = true) => new(Day(day), VerificationTest.FollowUp, passed);

    public static ImmutableArray<RegulationFinding> UsFindings(Appliance appliance, string asOf, params ServiceEvent[] events) =>
        LeakRepairFindings.Of(appliance, events, HfcRule, LeakRateMethod.Annualising, Day(asOf));

    /// <summary>The due date of the only finding of that code, or null where there is no such finding.</summary>
    public static DateOnly? Due(this ImmutableArray<RegulationFinding> findings, RegulationCode code) => findings.SingleOrDefault(f => f.Code == code)?.Due;

    public static bool Has(this ImmutableArray<RegulationFinding> findings, RegulationCode code) => findings.Any(f => f.Code == code);

    public static string? Word(this RegulationFinding finding, string part) => finding.Parts.Single(p => p.Name == part).Word;

    public static double Number(this RegulationFinding finding, string part) => finding.Parts.Single(p => p.Name == part).Amount!.Value.Canonical;
}
