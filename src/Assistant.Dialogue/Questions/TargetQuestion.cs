using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Questions;

/// <summary>"What superheat should I have", "what should my head be at 95 outside": what a healthy plant would show.</summary>
internal static class TargetQuestion
{
    public static Answer Answer(Asked asked)
    {
        var about = asked.Arguments.About ?? Implied(asked);
        return about == FactCatalogue.DischargePressure || about == FactCatalogue.SaturatedCondensingTemperature ? Head(asked)
            : about == FactCatalogue.SuctionPressure || about == FactCatalogue.SaturatedSuctionTemperature ? Suction(asked)
            : about == FactCatalogue.HeadPressureControlSetting ? SetpointQuestion.Answer(asked)
            : about == FactCatalogue.CondenserSplit ? Difference(asked, FactCatalogue.DesignCondenserSplit, CondenserSplit.Usual, "answer.target.split")
            : about == FactCatalogue.DesignEvaporatorTd ? Difference(asked, FactCatalogue.DesignEvaporatorTd, EvaporatorTd.Usual, "answer.target.td")
            : about == FactCatalogue.Subcooling ? asked.Answer("answer.target.subcooling", ("low", TemperatureDifference.FromFahrenheitDegrees(5)), ("high", TemperatureDifference.FromFahrenheitDegrees(10)))
            : Superheat(asked);
    }

    // With an outside temperature in the question it is the head that is meant.
    private static Fact Implied(Asked asked) =>
        asked.Said(Dimension.Temperature, FactCatalogue.AmbientTemperature) is null ? FactCatalogue.Superheat : FactCatalogue.DischargePressure;

    private static Answer Difference(Asked asked, Fact plate, (TemperatureDifference Low, TemperatureDifference High) usual, string key) =>
        asked.NamedDifference(plate) is { } said
            ? asked.Answer(key + "-plate", ("plate", said))
            : asked.Answer(key, ("low", usual.Low), ("high", usual.High));

    private static Answer Superheat(Asked asked)
    {
        if (asked.Facts.Word(FactCatalogue.Application) is null)
        {
            var (cooler, freezer) = (SuperheatTarget.AtEvaporator(false, null), SuperheatTarget.AtEvaporator(true, null));
            return Asked.Because(
                asked.Say("answer.target.superheat-either", ("low", cooler.Low), ("high", cooler.High), ("freezer_low", freezer.Low), ("freezer_high", freezer.High)),
                When(asked));
        }

        var target = SuperheatTarget.AtEvaporator(asked.IsFreezer, asked.NamedDifference(FactCatalogue.DesignEvaporatorTd));
        return Asked.Because(
            target.Aim is { } aim
                ? asked.Say("answer.target.superheat-aim", ("low", target.Low), ("high", target.High), ("aim", aim))
                : asked.Say("answer.target.superheat", ("low", target.Low), ("high", target.High)),
            When(asked));
    }

    private static Phrase When(Asked asked) => asked.Say("answer.target.superheat-when", ("least", SuperheatTarget.LeastAtCompressor));

    private static Answer Head(Asked asked)
    {
        if (asked.Refrigerant is not { } refrigerant)
        {
            return asked.NeedsRefrigerant();
        }

        if (asked.Temperature(FactCatalogue.AmbientTemperature) is not { } ambient)
        {
            return asked.Needs(FactCatalogue.AmbientTemperature);
        }

        var plate = asked.NamedDifference(FactCatalogue.DesignCondenserSplit);
        var held = HeldHead.Of(asked.Facts, refrigerant);
        var (least, most) = (plate ?? CondenserSplit.Usual.Low, plate ?? CondenserSplit.Usual.High);
        var (low, high) = (Higher(ambient + least, held), Higher(ambient + most, held));
        if (!refrigerant.Saturation.TryDewPressure(low, out var from) || !refrigerant.Saturation.TryDewPressure(high, out var to))
        {
            return asked.OutOfTable(refrigerant);
        }

        var say = low == high
            ? asked.Say("answer.target.head", ("pressure", asked.Gauge(from)), ("condensing", low), ("ambient", ambient))
            : asked.Say("answer.target.head-range", ("low", asked.Gauge(from)), ("high", asked.Gauge(to)), ("coldest", low), ("warmest", high), ("ambient", ambient));
        return Asked.Because(
            say,
            plate is { } split ? asked.Say("answer.target.head-plate", ("split", split)) : asked.Say("answer.target.head-usual", ("low", least), ("high", most)),
            held is { } setting && setting > ambient + least ? asked.Say("answer.target.head-held", ("setting", setting)) : null);
    }

    private static Answer Suction(Asked asked)
    {
        if (asked.Refrigerant is not { } refrigerant)
        {
            return asked.NeedsRefrigerant();
        }

        if (asked.Temperature(FactCatalogue.Setpoint, FactCatalogue.BoxTemperature) is not { } box)
        {
            return asked.Needs(FactCatalogue.Setpoint);
        }

        var plate = asked.NamedDifference(FactCatalogue.DesignEvaporatorTd);
        var (small, large) = (plate ?? EvaporatorTd.Usual.Low, plate ?? EvaporatorTd.Usual.High);
        return refrigerant.Saturation.TryDewPressure(box - large, out var low) && refrigerant.Saturation.TryDewPressure(box - small, out var high)
            ? Asked.Because(
                low == high
                    ? asked.Say("answer.target.suction", ("pressure", asked.Gauge(low)), ("evaporating", box - large), ("box", box))
                    : asked.Say("answer.target.suction-range", ("low", asked.Gauge(low)), ("high", asked.Gauge(high)), ("box", box)),
                asked.Say("answer.target.suction-td", ("low", small), ("high", large)))
            : asked.OutOfTable(refrigerant);
    }

    private static CelsiusTemperature Higher(CelsiusTemperature one, CelsiusTemperature? other) => other is { } held && held > one ? held : one;
}
