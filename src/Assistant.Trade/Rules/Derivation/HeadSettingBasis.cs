using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Trade.Rules.Derivation;

/// <summary>
/// A head setting in degrees on a blend with glide means one pressure by dew and another by bubble. Without a word on it it is taken
/// by dew (the rating convention of EN 12900 and AHRI 540, from memory); where the other meaning would change the verdict, it is asked.
/// </summary>
internal static class HeadSettingBasis
{
    /// <summary>Glide from which dew and bubble are shown beside each other, 1.8 degF / 1 K: common practice.</summary>
    private static readonly TemperatureDifference GlideThatMatters = new(1);

    /// <summary>The fact to ask for, or null where the basis is known, does not matter or changes nothing.</summary>
    /// <param name="ranking">The faults by the setting as dew.</param>
    public static Fact? Asked(PlantState state, ReadOnlySpan<Weighing> ranking)
    {
        var facts = state.Facts;
        if (facts.Has(FactCatalogue.SaturationBasis) || facts.Temperature(FactCatalogue.HeadPressureControlSetting) is not { } setting
            || ranking.Length == 0 || facts.Is(FactCatalogue.HeadPressureControl, "none")
            || state.Refrigerant is not { } refrigerant || !refrigerant.Saturation.TryDewPressure(setting, out var held)
            || !refrigerant.Saturation.TryBubbleTemperature(held, out var bubble) || setting.Degrees - bubble.Degrees < GlideThatMatters.Kelvins)
        {
            return null;
        }

        var other = Ranking.Of(SymptomReader.Read(new PlantState(facts.With(new Observation(FactCatalogue.SaturationBasis, "bubble")))));
        return other.Length == 0 || other[0].Rule.Code != ranking[0].Rule.Code ? FactCatalogue.SaturationBasis : null;
    }
}
