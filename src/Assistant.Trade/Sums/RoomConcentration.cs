using Assistant.Trade.Refrigerants;
using UnitsNet;

namespace Assistant.Trade.Sums;

/// <summary>What stands in a room if the whole charge leaks into it.</summary>
/// <param name="Reached">Charge over room volume, evenly mixed.</param>
/// <param name="Limit">The ASHRAE 34 limit, from memory; null where none is remembered.</param>
public sealed record RoomConcentration(MassConcentration Reached, MassConcentration? Limit)
{
    /// <summary>True above the limit; null where no limit is known.</summary>
    public bool? IsOver => Limit is { } limit ? Reached > limit : null;

    /// <summary>charge / volume against the refrigerant concentration limit. Source: ASHRAE Standards 15 and 34 (from memory): check the current table.</summary>
    /// <param name="room">Clear volume of the smallest room the charge can leak into.</param>
    public static RoomConcentration Of(Refrigerant refrigerant, Mass charge, Volume room)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(room.CubicMeters, nameof(room));
        return new(MassConcentration.FromKilogramsPerCubicMeter(charge.Kilograms / room.CubicMeters), ConcentrationLimits.Of(refrigerant));
    }
}
