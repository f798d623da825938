using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;

namespace Assistant.Dialogue.Questions;

/// <summary>"What is saturation for 404A at 117 pounds": the temperature of a pressure, or the pressure of a temperature.</summary>
internal static class SaturationQuestion
{
    public static Answer Answer(Asked asked)
    {
        if (asked.Refrigerant is not { } refrigerant)
        {
            return asked.NeedsRefrigerant();
        }

        if (asked.Said(Dimension.Pressure) is null && asked.Said(Dimension.Temperature) is { } degrees)
        {
            return PressureOf(asked, refrigerant, new(degrees));
        }

        return (asked.Pressure() ?? asked.Pressure(FactCatalogue.SuctionPressure, FactCatalogue.SuctionPressureAtEvaporator, FactCatalogue.DischargePressure)) is { } pressure
            ? TemperatureOf(asked, refrigerant, pressure)
            : asked.Needs(FactCatalogue.SuctionPressure);
    }

    private static Answer TemperatureOf(Asked asked, Refrigerant refrigerant, AbsolutePressure pressure)
    {
        var table = refrigerant.Saturation;
        if (!table.TryDewTemperature(pressure, out var dew) || !table.TryBubbleTemperature(pressure, out var bubble))
        {
            return asked.OutOfTable(refrigerant);
        }

        return Asked.HasGlide(refrigerant, pressure)
            ? Asked.Because(
                asked.Say("answer.saturation.temperatures", ("refrigerant", refrigerant.Designation), ("pressure", asked.Gauge(pressure)), ("dew", dew), ("bubble", bubble)),
                asked.Say("answer.saturation.which"),
                Altitude(asked))
            : Asked.Because(
                asked.Say("answer.saturation.temperature", ("refrigerant", refrigerant.Designation), ("pressure", asked.Gauge(pressure)), ("dew", dew)),
                Altitude(asked));
    }

    private static Answer PressureOf(Asked asked, Refrigerant refrigerant, CelsiusTemperature temperature)
    {
        var table = refrigerant.Saturation;
        if (!table.TryDewPressure(temperature, out var dew) || !table.TryBubblePressure(temperature, out var bubble))
        {
            return asked.OutOfTable(refrigerant);
        }

        return Asked.HasGlide(refrigerant, dew)
            ? Asked.Because(
                asked.Say("answer.saturation.pressures", ("refrigerant", refrigerant.Designation), ("temperature", temperature), ("dew", asked.Gauge(dew)), ("bubble", asked.Gauge(bubble))),
                asked.Say("answer.saturation.which"),
                Altitude(asked))
            : Asked.Because(
                asked.Say("answer.saturation.pressure", ("refrigerant", refrigerant.Designation), ("temperature", temperature), ("dew", asked.Gauge(dew))),
                Altitude(asked));
    }

    // A gauge on a mountain counts from thinner air: say what was reckoned with.
    private static Phrase Altitude(Asked asked) => asked.Known(FactCatalogue.Altitude, Dimension.Length) is { } meters
        ? asked.Say("answer.altitude", ("altitude", new Amount(meters, Dimension.Length)))
        : asked.Say("answer.sea-level");
}
