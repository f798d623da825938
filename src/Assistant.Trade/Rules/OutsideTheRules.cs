using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Derivation;
using Assistant.Trade.Rules.Evidence;
using static Assistant.Trade.Rules.Evidence.Symptom;

namespace Assistant.Trade.Rules;

/// <summary>Plants the rules were not written for: what can still be judged is, the rest is left out, and it is said.</summary>
internal static class OutsideTheRules
{
    public const string ElectronicValve = "reason.outside-electronic-valve";

    private static readonly ImmutableArray<Symptom> OfCondensing =
        [SuperheatExcess, ValveDemand, Subcooling, HeadExcess, HeadOverSetting, ColdSplitExcess, TdShare, AirShare, StandingExcess, HighSideOverAmbient, CompressorEfficiency];

    private static readonly ImmutableArray<Symptom> OfTheValve = [SuperheatExcess, ValveDemand, Subcooling];

    /// <summary>What lies outside, or null; the symptoms it takes away are made unknown.</summary>
    public static Reason? TakeAway(PlantState state, SymptomTable table)
    {
        if (state.Refrigerant?.Designation == "R744")
        {
            return Without(table, OfCondensing, "reason.outside-transcritical");
        }

        return state.Facts.Word(FactCatalogue.MeteringDevice) switch
        {
            "fixed" => Without(table, OfTheValve, "reason.outside-fixed-orifice"),
            "eev" => new(ElectronicValve),
            _ => null,
        };
    }

    private static Reason Without(SymptomTable table, ImmutableArray<Symptom> symptoms, string key)
    {
        foreach (var symptom in symptoms)
        {
            table[symptom] = Measure.Unknown;
        }

        return new(key);
    }
}
