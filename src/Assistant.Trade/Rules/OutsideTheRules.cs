using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Derivation;
using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Rules.Faults;
using static Assistant.Trade.Rules.Evidence.Symptom;

namespace Assistant.Trade.Rules;

/// <summary>Plants the rules were not written for: what can still be judged is, the rest is left out, and it is said.</summary>
internal static class OutsideTheRules
{
    public const string ElectronicValve = "reason.outside-electronic-valve";

    private static readonly ImmutableArray<Symptom> OfCondensing =
        [SuperheatExcess, ValveDemand, Subcooling, HeadExcess, HeadOverSetting, ColdSplitExcess, TdShare, AirShare, StandingExcess, HighSideOverAmbient, CompressorEfficiency];

    public const string NoTable = "reason.outside-no-table";

    private static readonly ImmutableArray<Symptom> BehindIce =
        [SuperheatExcess, ValveDemand, Subcooling, HeadExcess, SplitShare, HeadOverSetting, ColdSplitExcess, CompressorSuperheat, CurrentShare, CompressorEfficiency];

    private static readonly ImmutableArray<Symptom> OfTheRoom = [TdShare, AirShare, RestingTd, ProductOverBox];

    private static readonly ImmutableArray<Symptom> OfTheValve = [SuperheatExcess, ValveDemand, Subcooling];

    /// <summary>What lies outside, or null; the symptoms it takes away are made unknown.</summary>
    public static Reason? TakeAway(PlantState state, SymptomTable table)
    {
        // Nothing on the refrigerant side is judged through ice: what is read there says only that air is missing.
        if (table[CoilIce] is { IsKnown: true, Value: Words.Blocked })
        {
            foreach (var symptom in BehindIce)
            {
                table[symptom] = Measure.Unknown;
            }
        }

        // Nothing that is reckoned from the room's temperature is judged while two thermometers in it disagree.
        if (SensorError.IsShown(table))
        {
            foreach (var symptom in OfTheRoom)
            {
                table[symptom] = Measure.Unknown;
            }
        }

        if (state.Facts.Word(FactCatalogue.Refrigerant) is not null && state.Refrigerant is null)
        {
            return new(NoTable);
        }

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
