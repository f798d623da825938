using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Questions;

/// <summary>"What's my subcooling": bubble point of the liquid's pressure less its temperature.</summary>
internal static class SubcoolingQuestion
{
    private static readonly TemperatureDifference InstrumentError = new(-2);

    public static Answer Answer(Asked asked)
    {
        if (asked.Temperature(FactCatalogue.LiquidLineTemperature, FactCatalogue.CondenserOutletTemperature) is not { } liquid)
        {
            return asked.Facts.Difference(FactCatalogue.Subcooling) is { } said
                ? asked.Answer("answer.subcooling.plain", ("subcooling", said))
                : asked.Needs(FactCatalogue.LiquidLineTemperature);
        }

        if (asked.Refrigerant is not { } refrigerant)
        {
            return asked.NeedsRefrigerant();
        }

        if (asked.Pressure(FactCatalogue.LiquidPressure, FactCatalogue.DischargePressure) is not { } pressure)
        {
            return asked.Needs(FactCatalogue.DischargePressure);
        }

        if (!refrigerant.Saturation.TryBubbleTemperature(pressure, out var bubble) || !refrigerant.Saturation.TryDewTemperature(pressure, out var dew))
        {
            return asked.OutOfTable(refrigerant);
        }

        var subcooling = bubble - liquid;
        var from = Asked.HasGlide(refrigerant, pressure)
            ? asked.Say("answer.subcooling.from-blend", ("bubble", bubble), ("dew", dew), ("liquid", liquid))
            : asked.Say("answer.subcooling.from", ("bubble", bubble), ("liquid", liquid));
        var fromDischarge = asked.Said(Dimension.Pressure) is null && !asked.Facts.Has(FactCatalogue.LiquidPressure);
        return Asked.Because(
            subcooling < InstrumentError
                ? asked.Say("answer.subcooling.negative", ("subcooling", subcooling))
                : asked.Say("answer.subcooling.plain", ("subcooling", subcooling)),
            from,
            fromDischarge ? asked.Say("answer.subcooling.from-discharge") : null);
    }
}
