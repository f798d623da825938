using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Questions;

/// <summary>"What's my superheat": from the question's own pressure and temperature, else at the bulb, else at the compressor.</summary>
internal static class SuperheatQuestion
{
    // Both instruments together may be out by this much: below it a superheat cannot be, and no verdict is given.
    private static readonly TemperatureDifference InstrumentError = new(-2);

    // About 2 degF of saturation at design: ASHRAE Handbook - Refrigeration, halocarbon piping (from memory).
    private static readonly TemperatureDifference LineDrop = TemperatureDifference.FromFahrenheitDegrees(2);

    private static readonly TemperatureDifference NearSetpoint = TemperatureDifference.FromFahrenheitDegrees(5);

    public static Answer Answer(Asked asked)
    {
        var atCompressor = asked.Names(FactCatalogue.SuctionLineTemperatureAtCompressor) || asked.Temperature(FactCatalogue.SuctionLineTemperatureAtBulb) is null;
        var place = atCompressor ? FactCatalogue.SuctionLineTemperatureAtCompressor : FactCatalogue.SuctionLineTemperatureAtBulb;
        if (asked.Temperature(place) is not { } line)
        {
            return asked.Facts.Difference(FactCatalogue.Superheat) is { } said
                ? Judged(asked, said, false, [])
                : asked.Needs(FactCatalogue.SuctionLineTemperatureAtBulb);
        }

        if (Dew(asked, atCompressor, out var missing) is not { } dew)
        {
            return missing;
        }

        var superheat = line - dew;
        var from = asked.Say("answer.superheat.from", ("line", line), ("dew", dew));
        if (superheat < InstrumentError)
        {
            return Asked.Because(asked.Say("answer.superheat.negative", ("superheat", superheat)), from);
        }

        var approximate = !atCompressor && asked.Said(Dimension.Pressure) is null && !asked.Facts.Has(FactCatalogue.SuctionPressureAtEvaporator);
        return Judged(asked, superheat, atCompressor, [from, approximate ? asked.Say("answer.superheat.approximate", ("drop", LineDrop)) : null]);
    }

    private static CelsiusTemperature? Dew(Asked asked, bool atCompressor, out Answer missing)
    {
        missing = asked.Needs(FactCatalogue.SuctionPressure);
        var pressure = atCompressor
            ? asked.Pressure(FactCatalogue.SuctionPressure)
            : asked.Pressure(FactCatalogue.SuctionPressureAtEvaporator, FactCatalogue.SuctionPressure);
        if (pressure is null)
        {
            return asked.Facts.Temperature(FactCatalogue.SaturatedSuctionTemperature);
        }

        if (asked.Refrigerant is not { } refrigerant)
        {
            missing = asked.NeedsRefrigerant();
            return null;
        }

        missing = asked.OutOfTable(refrigerant);
        return refrigerant.Saturation.TryDewTemperature(pressure.Value, out var dew) ? dew : null;
    }

    private static Answer Judged(Asked asked, TemperatureDifference superheat, bool atCompressor, Phrase?[] because)
    {
        if (atCompressor)
        {
            var least = SuperheatTarget.LeastAtCompressor;
            var key = superheat < least ? "answer.superheat.compressor-low" : "answer.superheat.compressor-good";
            return Asked.Because(asked.Say(key, ("superheat", superheat), ("least", least)), [.. because]);
        }

        if (asked.Facts.Word(FactCatalogue.Application) is null)
        {
            return Asked.Because(asked.Say("answer.superheat.plain", ("superheat", superheat)), [.. because]);
        }

        var target = SuperheatTarget.AtEvaporator(asked.IsFreezer, asked.Facts.Difference(FactCatalogue.DesignEvaporatorTd));
        var standing = superheat < target.Low ? "low" : superheat > target.High ? "high" : "good";
        return Asked.Because(
            asked.Say("answer.superheat." + standing, ("superheat", superheat), ("low", target.Low), ("high", target.High)),
            [.. because, .. Reservations(asked)]);
    }

    private static IEnumerable<Phrase?> Reservations(Asked asked)
    {
        if (asked.Facts.Word(FactCatalogue.CoilIce) is "light" or "blocked")
        {
            yield return asked.Say("answer.superheat.ice");
        }

        if (asked.Facts.Temperature(FactCatalogue.BoxTemperature) is { } box && asked.Facts.Temperature(FactCatalogue.Setpoint) is { } setpoint && box - setpoint > NearSetpoint)
        {
            yield return asked.Say("answer.superheat.box-warm", ("over", box - setpoint));
        }
    }
}
