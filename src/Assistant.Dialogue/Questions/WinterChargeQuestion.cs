using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Dialogue.Questions;

/// <summary>"How much do I add for winter": the flooding still to come by the coldest design day, and whether the receiver can take it all.</summary>
internal static class WinterChargeQuestion
{
    public static Answer Answer(Asked asked)
    {
        if (asked.Refrigerant is not { } refrigerant)
        {
            return asked.NeedsRefrigerant();
        }

        if (asked.Facts.Word(FactCatalogue.HeadPressureControl) is "none" or "fan-cycling")
        {
            return asked.Answer("answer.winter.no-flooding");
        }

        if (HeldHead.Of(asked.Facts, refrigerant) is not { } held)
        {
            return asked.Needs(FactCatalogue.HeadPressureControlSetting);
        }

        if (asked.NamedDifference(FactCatalogue.DesignCondenserSplit) is not { } split)
        {
            return asked.Needs(FactCatalogue.DesignCondenserSplit);
        }

        if (asked.Facts.Temperature(FactCatalogue.AmbientTemperature) is not { } today)
        {
            return asked.Needs(FactCatalogue.AmbientTemperature);
        }

        if (asked.Temperature(FactCatalogue.ColdestDesignAmbient) is not { } coldest)
        {
            return asked.Needs(FactCatalogue.ColdestDesignAmbient);
        }

        if (asked.Volume(FactCatalogue.CondenserVolume) is not { } condenser)
        {
            return asked.Needs(FactCatalogue.CondenserVolume);
        }

        return WinterCharge.Of(refrigerant, held, split, today, coldest, condenser) is { } winter
            ? new(
                asked.Say("answer.winter.extra", ("extra", Mass(winter.Extra)), ("coldest", coldest)),
                [.. Assumptions(asked, winter, held, today, coldest), .. Receiver(asked, refrigerant, winter.Extra)],
                null)
            : asked.OutOfTable(refrigerant);
    }

    private static ImmutableArray<Phrase> Assumptions(Asked asked, WinterCharge winter, CelsiusTemperature held, CelsiusTemperature today, CelsiusTemperature coldest) =>
    [
        asked.Say("answer.winter.flooded", ("today", Amount.Ratio(winter.FloodedToday)), ("ambient", today), ("cold", Amount.Ratio(winter.FloodedColdest)), ("coldest", coldest), ("held", held)),
        asked.Say("answer.winter.assumes"),
    ];

    private static IEnumerable<Phrase> Receiver(Asked asked, Refrigerant refrigerant, Mass extra)
    {
        if (asked.Known(FactCatalogue.ReceiverVolume, Dimension.Volume) is not { } volume
            || LiquidFill.MostIn(Volume.FromCubicMeters(volume), refrigerant, LiquidFill.Reference) is not { } most)
        {
            yield return asked.Say("answer.winter.receiver-unknown");
            yield break;
        }

        if (asked.Known(FactCatalogue.FullCharge, Dimension.Mass) is not { } charge)
        {
            yield return asked.Say("answer.winter.receiver", ("most", Mass(most)));
            yield break;
        }

        var total = extra + UnitsNet.Mass.FromKilograms(charge);
        yield return asked.Say(total > most ? "answer.winter.receiver-over" : "answer.winter.receiver-fits", ("most", Mass(most)), ("total", Mass(total)));
    }

    private static Amount Mass(Mass mass) => new(mass.Kilograms, Dimension.Mass);
}
