using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;
using static Assistant.Trade.Facts.FactCatalogue;

namespace Assistant.App.Web;

/// <summary>What follows from the readings by calculation, each beside the facts it rests on.</summary>
internal static class DerivedViews
{
    public static IEnumerable<DerivedView> Of(VisitState state, DerivedValues derived, PhraseBook phrases)
    {
        string Say(string key, ReasonPart part) => phrases.Say(key, state.Units, part).Full;
        string[] Known(params ReadOnlySpan<Fact> facts) => [.. facts.ToArray().Where(state.Facts.Has).Select(f => f.Name)];
        var suction = Known(SuctionPressureAtEvaporator) is { Length: > 0 } near ? near : Known(SuctionPressure);
        if (derived.SaturatedSuctionTemperature is { } sst)
        {
            yield return new(Say("derived.saturated-suction", ("sst", sst)), Known(SuctionPressure) is { Length: > 0 } unit ? unit : suction);
        }

        if (derived.SaturatedCondensingTemperature is { } sct)
        {
            yield return new(Say("derived.saturated-condensing", ("sct", sct)), Known(DischargePressure));
        }

        if (derived.CondenserSplit is { } split)
        {
            var text = state.Facts.Difference(DesignCondenserSplit) is { } plate
                ? phrases.Say("page.split-against-plate", state.Units, ("split", split), ("plate", plate)).Full
                : Say("page.split", ("split", split));
            yield return new(text, Known(DischargePressure, AmbientTemperature, CondenserSplit));
        }

        if (derived.Superheat is { } superheat)
        {
            yield return new(Say(derived.SuperheatIsApproximate ? "derived.superheat-approximate" : "derived.superheat", ("superheat", superheat)), [.. suction, .. Known(SuctionLineTemperatureAtBulb, Superheat)]);
        }

        if (derived.Subcooling is { } subcooling)
        {
            var head = Known(LiquidPressure) is { Length: > 0 } liquid ? liquid : Known(DischargePressure);
            var line = Known(LiquidLineTemperature) is { Length: > 0 } read ? read : Known(CondenserOutletTemperature);
            yield return new(Say("derived.subcooling", ("subcooling", subcooling)), [.. head, .. line, .. Known(Subcooling)]);
        }

        if (derived.EvaporatorTd is { } td)
        {
            yield return new(Say("page.evaporator-td", ("td", td)), [.. Known(EvaporatorAirIn) is { Length: > 0 } air ? air : Known(BoxTemperature), .. suction]);
        }
    }
}
