using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Questions;

/// <summary>"How cold can it get before the head pressure control has to work."</summary>
internal static class MinimumAmbientQuestion
{
    public static Answer Answer(Asked asked)
    {
        var held = HeldDew(asked, out var known);
        var plate = asked.NamedDifference(FactCatalogue.DesignCondenserSplit);
        var rests = asked.Say(known ? "answer.minimum-ambient.setting" : "answer.minimum-ambient.usual-setting", ("held", held));
        var say = plate is { } split
            ? asked.Say("answer.minimum-ambient.one", ("ambient", MinimumAmbient.Of(held, split)))
            : asked.Say("answer.minimum-ambient.range", ("low", MinimumAmbient.Of(held, CondenserSplit.Usual.High)), ("high", MinimumAmbient.Of(held, CondenserSplit.Usual.Low)));
        ImmutableArray<Phrase> because =
        [
            rests,
            plate is { } said ? asked.Say("answer.minimum-ambient.plate", ("split", said))
                : asked.Say("answer.minimum-ambient.usual-split", ("low", CondenserSplit.Usual.Low), ("high", CondenserSplit.Usual.High)),
        ];
        return new(say, because, BasisOpen(asked, held) ? asked.Say("answer.needs-basis", ("held", held)) : null);
    }

    private static CelsiusTemperature HeldDew(Asked asked, out bool known)
    {
        var setting = asked.Refrigerant is { } refrigerant
            ? HeldHead.Of(asked.Facts, refrigerant)
            : asked.Facts.Temperature(FactCatalogue.HeadPressureControlSetting);
        known = setting is not null;
        return setting ?? MinimumAmbient.UsualCondensing;
    }

    // Degrees on a blend with a glide, and nobody said of which point.
    private static bool BasisOpen(Asked asked, CelsiusTemperature held) =>
        asked.Refrigerant is { } refrigerant
        && asked.Facts.Temperature(FactCatalogue.HeadPressureControlSetting) is not null
        && !asked.Facts.Has(FactCatalogue.SaturationBasis)
        && refrigerant.Saturation.TryDewPressure(held, out var pressure)
        && Asked.HasGlide(refrigerant, pressure);
}
