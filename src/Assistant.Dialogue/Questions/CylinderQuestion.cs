using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Dialogue.Questions;

/// <summary>"How much is left in the cylinder", "will it feed", "how full can I fill a 50 lb recovery tank".</summary>
internal static class CylinderQuestion
{
    public static Answer Answer(Asked asked)
    {
        var capacity = asked.Said(Dimension.Mass) is { } water && !asked.Names(FactCatalogue.CylinderWeight) && !asked.Names(FactCatalogue.CylinderTare)
            ? Mass.FromKilograms(water)
            : (Mass?)null;
        if (capacity is { } tank)
        {
            return FillLimit(asked, tank);
        }

        return (asked.Mass(FactCatalogue.CylinderWeight), Tare(asked)) switch
        {
            ({ } gross, { } tare) => Contents(asked, gross, tare),
            (null, _) => asked.Needs(FactCatalogue.CylinderWeight),
            _ => asked.Needs(FactCatalogue.CylinderTare),
        };
    }

    private static Mass? Tare(Asked asked) => asked.Names(FactCatalogue.CylinderTare)
        ? asked.Mass(FactCatalogue.CylinderTare)
        : asked.Known(FactCatalogue.CylinderTare, Dimension.Mass) is { } kg ? Mass.FromKilograms(kg) : null;

    private static Answer Contents(Asked asked, Mass gross, Mass tare)
    {
        var net = Cylinder.Net(gross, tare);
        return net < Mass.Zero
            ? asked.Answer("answer.cylinder.impossible", ("gross", Amount(gross)), ("tare", Amount(tare)))
            : Asked.Because(asked.Say("answer.cylinder.net", ("net", Amount(net)), ("gross", Amount(gross)), ("tare", Amount(tare))), Feeding(asked));
    }

    private static Phrase? Feeding(Asked asked)
    {
        if (asked.Refrigerant is not { } refrigerant
            || asked.Facts.Temperature(FactCatalogue.CylinderTemperature) is not { } temperature
            || Cylinder.Pressure(refrigerant, temperature) is not { } pressure)
        {
            return null;
        }

        return asked.Facts.Pressure(FactCatalogue.SuctionPressure) is { } system
            ? asked.Say(Cylinder.Feeds(pressure, system) ? "answer.cylinder.feeds" : "answer.cylinder.feeds-not", ("pressure", asked.Gauge(pressure)), ("temperature", temperature), ("system", asked.Gauge(system)))
            : asked.Say("answer.cylinder.pressure", ("pressure", asked.Gauge(pressure)), ("temperature", temperature));
    }

    private static Answer FillLimit(Asked asked, Mass waterCapacity)
    {
        if (asked.Refrigerant is not { } refrigerant)
        {
            return asked.NeedsRefrigerant();
        }

        var warmest = asked.Facts.Temperature(FactCatalogue.CylinderTemperature) ?? LiquidFill.Reference;
        if (LiquidFill.MostIn(LiquidFill.VolumeOfWater(waterCapacity), refrigerant, warmest) is not { } most)
        {
            return asked.OutOfTable(refrigerant);
        }

        return Asked.Because(
            asked.Say("answer.cylinder.limit", ("most", Amount(most)), ("refrigerant", refrigerant.Designation), ("capacity", Amount(waterCapacity))),
            asked.Say("answer.cylinder.limit-rule", ("share", Trade.Quantities.Amount.Ratio(LiquidFill.Limit)), ("temperature", warmest > LiquidFill.Reference ? warmest : LiquidFill.Reference)));
    }

    private static Amount Amount(Mass mass) => new(mass.Kilograms, Dimension.Mass);
}
