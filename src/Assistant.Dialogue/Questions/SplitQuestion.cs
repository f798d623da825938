using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Questions;

/// <summary>"What's my split": condensing temperature over the air on the condenser, against plate or usual.</summary>
internal static class SplitQuestion
{
    public static Answer Answer(Asked asked)
    {
        if (asked.Temperature(FactCatalogue.AmbientTemperature) is not { } ambient)
        {
            return asked.Needs(FactCatalogue.AmbientTemperature);
        }

        if (Condensing(asked, out var missing) is not { } condensing)
        {
            return missing;
        }

        var split = CondenserSplit.Of(condensing, ambient);
        var from = asked.Say("answer.split.from", ("condensing", condensing), ("ambient", ambient));
        return asked.Facts.Difference(FactCatalogue.DesignCondenserSplit) is { } plate
            ? Asked.Because(asked.Say("answer.split.plate", ("split", split), ("plate", plate)), from)
            : Asked.Because(asked.Say("answer.split.usual", ("split", split), ("low", CondenserSplit.Usual.Low), ("high", CondenserSplit.Usual.High)), from);
    }

    private static CelsiusTemperature? Condensing(Asked asked, out Answer missing)
    {
        missing = asked.Needs(FactCatalogue.DischargePressure);
        if (asked.Pressure(FactCatalogue.DischargePressure) is not { } discharge)
        {
            return asked.Facts.Temperature(FactCatalogue.SaturatedCondensingTemperature);
        }

        if (asked.Refrigerant is not { } refrigerant)
        {
            missing = asked.NeedsRefrigerant();
            return null;
        }

        missing = asked.OutOfTable(refrigerant);
        return refrigerant.Saturation.TryDewTemperature(discharge, out var dew) ? dew : null;
    }
}
