using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Rules.Derivation;

/// <summary>What the discharge line tells of the compression.</summary>
internal static class CompressorWork
{
    /// <summary>Above this a freezer's compressor may be cooled by injected liquid, which hides its work: 98 degC, common practice.</summary>
    private const double MayInject = 98;

    /// <summary>The isentropic rise of enthalpy over the one the two line temperatures show; first principles. Unknown where the vapour tables do not reach.</summary>
    public static Measure Efficiency(PlantState state)
    {
        if (state is not { SuctionPressure: { } low, DischargePressure: { } high, Refrigerant: { } refrigerant }
            || state.Facts.Temperature(FactCatalogue.SuctionLineTemperatureAtCompressor) is not { } entering
            || state.Facts.Temperature(FactCatalogue.DischargeLineTemperature) is not { } leaving
            || (state.IsFreezer && leaving.Degrees > MayInject))
        {
            return Measure.Unknown;
        }

        var vapour = refrigerant.Superheated;
        if (!vapour.Covers(low, entering) || !vapour.Covers(high, leaving) || vapour.TemperatureAtEntropy(high, vapour.Entropy(low, entering)) is not { } ideal)
        {
            return Measure.Unknown;
        }

        var start = vapour.Enthalpy(low, entering).JoulesPerKilogram;
        var least = vapour.Enthalpy(high, ideal).JoulesPerKilogram - start;
        var taken = vapour.Enthalpy(high, leaving).JoulesPerKilogram - start;
        return least > 0 && taken > 0 ? new(least / taken, Instruments.CompressionShare) : Measure.Unknown;
    }
}
