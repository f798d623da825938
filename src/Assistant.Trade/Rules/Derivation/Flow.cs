using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Rules.Derivation;

/// <summary>
/// What the suction pressure lets a sound compressor take, against its flow at design: first principles, a fixed displacement
/// fills with vapour of the suction's density, so pressure, duty, TD and split all fall together when the box is cold.
/// </summary>
internal static class Flow
{
    /// <summary>Density of the suction vapour over that at setpoint less design TD; 1 where it cannot be told.</summary>
    public static double Share(PlantState state)
    {
        var suction = state.Suction.IsKnown ? state.Suction : state.Evaporator;
        if (!suction.IsKnown || state.Refrigerant is null)
        {
            return 1;
        }

        var box = state.Degrees(FactCatalogue.Setpoint) ?? (state.IsFreezer ? TradeValues.FreezerBox : TradeValues.CoolerBox);
        var design = box - state.DesignTd - TradeValues.SuctionLineDrop;
        var table = state.Refrigerant.Saturation;
        if (!table.TryDewPressure(new(design), out var atDesign) || !table.TryDewPressure(new(suction.Value), out var now))
        {
            return 1;
        }

        return now.Pascals / atDesign.Pascals;
    }
}
