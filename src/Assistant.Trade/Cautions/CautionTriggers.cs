using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Rules;
using static Assistant.Trade.Cautions.CautionCode;

namespace Assistant.Trade.Cautions;

/// <summary>
/// Which cautions belong to a set of facts and to what is thought to be wrong. What has been said to whom already is the
/// conversation's business.
/// </summary>
public static class CautionTriggers
{
    /// <summary>A line this warm burns at a touch, 60 degC: EN ISO 13732-1, bare metal, from memory.</summary>
    private static readonly CelsiusTemperature BurnsAtATouch = new(60);

    /// <summary>Cold food above this is the food safety plan's business, 41 degF / 5 degC: FDA Food Code 3-501.16.</summary>
    private static readonly CelsiusTemperature ColdFoodLimit = new(5);

    /// <summary>Ice on rungs and roofs, and nobody near to help who falls: freezing point.</summary>
    private static readonly CelsiusTemperature Freezing = new(0);

    /// <summary>A room in which a person cools quickly, -10 degC: common practice.</summary>
    private static readonly CelsiusTemperature ColdRoom = new(-10);

    /// <summary>Warmest water or air for a cylinder, 52 degC / 125 degF: 49 CFR 173, from memory.</summary>
    private static readonly CelsiusTemperature HottestCylinder = new(52);

    /// <summary>Every caution of the facts and of the verdicts that are likely or better, in the contract's order, each once.</summary>
    public static ImmutableArray<CautionCode> For(FactSet facts, ImmutableArray<Finding> findings)
    {
        var found = OfRefrigerant(RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant))) | OfSite(facts) | OfMachine(facts) | OfHandling(facts);
        foreach (var finding in findings)
        {
            if (finding.Standing <= Standing.Likely)
            {
                found |= Set(Of(finding.Code));
            }
        }

        return Listed(found);
    }

    /// <summary>The cautions of putting this fault right.</summary>
    public static ImmutableArray<CautionCode> Of(FaultCode fault) =>
        fault == FaultCode.NotEnoughEvidence ? [] : FaultRules.Of(fault).Cautions;

    private static uint OfRefrigerant(Refrigerant? refrigerant) => refrigerant switch
    {
        null => 0,
        { Designation: "R744" } => Set(HighPressureCo2, OxygenDisplacement),
        { SafetyClass: SafetyClass.B2L } => Set(Ammonia),
        { SafetyClass: SafetyClass.A2L or SafetyClass.A3 } => Set(FlammableRefrigerant),
        _ => 0,
    };

    private static uint OfSite(FactSet facts)
    {
        var found = facts.Temperature(FactCatalogue.AmbientTemperature) <= Freezing ? Set(Ladder, RoofWeather, LoneWork, ColdStress) : 0;
        found |= facts.Temperature(FactCatalogue.BoxTemperature) <= ColdRoom || facts.Is(FactCatalogue.Application, "freezer") ? Set(LoneWork, ColdStress, TrappedInside) : 0;
        found |= facts.Temperature(FactCatalogue.ProductTemperature) > ColdFoodLimit ? Set(FoodSafety) : 0;
        found |= facts.Is(FactCatalogue.CoilIce, "blocked") ? Set(IceRemoval, LockOut, MovingFan) : 0;
        return facts.Word(FactCatalogue.EvaporatorFans) is "some" or "none" ? found | Set(LockOut, MovingFan) : found;
    }

    private static uint OfMachine(FactSet facts)
    {
        var found = facts.Temperature(FactCatalogue.DischargeLineTemperature) >= BurnsAtATouch ? Set(HotSurface) : 0;
        found |= facts.Word(FactCatalogue.CondenserCoil) is "dirty" or "snowed" ? Set(LockOut, MovingFan) : 0;
        found |= facts.Is(FactCatalogue.CondenserCoil, "snowed") ? Set(Ladder, RoofWeather) : 0;
        found |= facts.Word(FactCatalogue.CondenserFans) is "some" or "none" or "cycling" ? Set(LockOut, MovingFan) : 0;
        return facts.Is(FactCatalogue.Compressor, "off") && facts.Is(FactCatalogue.CallingForCooling, "yes") ? found | Set(Electrical, LockOut) : found;
    }

    private static uint OfHandling(FactSet facts)
    {
        var found = facts.Temperature(FactCatalogue.CylinderTemperature) >= HottestCylinder ? Set(CylinderHeating) : 0;
        found |= facts.Has(FactCatalogue.ChargeAdded) ? Set(LiquidRefrigerant, LiquidToSuction, NoVenting) : 0;
        found |= facts.Has(FactCatalogue.ChargeRecovered) ? Set(LiquidRefrigerant, OverfullCylinder, NoVenting) : 0;
        found |= facts.Has(FactCatalogue.TestPressure) ? Set(CautionCode.Nitrogen) : 0;
        return facts.Is(FactCatalogue.HotWorkAllowed, "yes") ? found | Set(HotWork, BurntRefrigerant) : found;
    }

    private static uint Set(params ReadOnlySpan<CautionCode> codes)
    {
        var set = 0u;
        foreach (var code in codes)
        {
            set |= 1u << (int)code;
        }

        return set;
    }

    private static uint Set(ImmutableArray<CautionCode> codes) => Set(codes.AsSpan());

    private static ImmutableArray<CautionCode> Listed(uint set)
    {
        var listed = ImmutableArray.CreateBuilder<CautionCode>(System.Numerics.BitOperations.PopCount(set));
        for (var code = 0; set >> code != 0; code++)
        {
            if ((set >> code & 1) != 0)
            {
                listed.Add((CautionCode)code);
            }
        }

        return listed.MoveToImmutable();
    }
}
