using System.Globalization;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;
using UnitsNet;
using UnitSystem = Assistant.Trade.Quantities.UnitSystem;

namespace Assistant.Dialogue.Questions;

/// <summary>"Is this room big enough if it all leaks out."</summary>
internal static class RoomConcentrationQuestion
{
    public static Answer Answer(Asked asked)
    {
        if (asked.Refrigerant is not { } refrigerant)
        {
            return asked.NeedsRefrigerant();
        }

        if (asked.Mass(FactCatalogue.FullCharge) is not { } charge)
        {
            return asked.Needs(FactCatalogue.FullCharge);
        }

        if (asked.Volume() is not { } room || room <= Volume.Zero)
        {
            return new(Replies.Phrase.Empty, [], asked.Say("answer.room.needs-volume"));
        }

        var concentration = RoomConcentration.Of(refrigerant, charge, room);
        if (concentration.Limit is not { } limit)
        {
            return asked.Answer("answer.room.no-limit", ("reached", Written(concentration.Reached, asked.Units)), ("refrigerant", refrigerant.Designation));
        }

        return Asked.Because(
            asked.Say(concentration.IsOver == true ? "answer.room.over" : "answer.room.under", ("reached", Written(concentration.Reached, asked.Units)), ("limit", Written(limit, asked.Units))),
            asked.Say("answer.room.check", ("charge", new Amount(charge.Kilograms, Dimension.Mass)), ("room", new Amount(room.CubicMeters, Dimension.Volume))));
    }

    // ASHRAE 34 gives its limits in g/m3 and in lb per thousand cubic feet.
    private static string Written(MassConcentration concentration, UnitSystem units) => units == UnitSystem.Us
        ? (concentration.PoundsPerCubicFoot * 1000).ToString("0.##", CultureInfo.InvariantCulture) + " lb/1000 ft3"
        : concentration.GramsPerCubicMeter.ToString("0.##", CultureInfo.InvariantCulture) + " g/m3";
}
