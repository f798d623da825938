using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Questions;

/// <summary>"What should the discharge line be": from the suction state and the head, and against what was read.</summary>
internal static class DischargeTemperatureQuestion
{
    public static Answer Answer(Asked asked)
    {
        if (asked.Refrigerant is not { } refrigerant)
        {
            return asked.NeedsRefrigerant();
        }

        if (asked.Facts.Pressure(FactCatalogue.SuctionPressure) is not { } suction)
        {
            return asked.Needs(FactCatalogue.SuctionPressure);
        }

        if (asked.Temperature(FactCatalogue.SuctionLineTemperatureAtCompressor) is not { } line)
        {
            return asked.Needs(FactCatalogue.SuctionLineTemperatureAtCompressor);
        }

        if (asked.Facts.Pressure(FactCatalogue.DischargePressure) is not { } discharge)
        {
            return asked.Needs(FactCatalogue.DischargePressure);
        }

        if (DischargeTemperature.Expected(refrigerant, suction, line, discharge) is not { } expected)
        {
            return asked.Answer("answer.discharge.outside", ("refrigerant", refrigerant.Designation));
        }

        return Asked.Because(
            asked.Say("answer.discharge.expected", ("expected", expected)),
            asked.Say("answer.discharge.from", ("efficiency", Amount.Ratio(DischargeTemperature.UsualEfficiency))),
            Read(asked));
    }

    private static Phrase? Read(Asked asked) => asked.Facts.Temperature(FactCatalogue.DischargeLineTemperature) is { } read
        ? asked.Say(read > DischargeTemperature.Alarm ? "answer.discharge.alarm" : "answer.discharge.read", ("read", read), ("alarm", DischargeTemperature.Alarm))
        : null;
}
