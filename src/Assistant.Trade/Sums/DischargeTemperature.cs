using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Sums;

/// <summary>The temperature at which a compressor should deliver.</summary>
public static class DischargeTemperature
{
    /// <summary>Isentropic efficiency of a sound small compressor where none is known. Common practice.</summary>
    public const double UsualEfficiency = 0.65;

    /// <summary>The usual alarm at the discharge line, six inches from the valve: 225 degF. Common practice.</summary>
    public static CelsiusTemperature Alarm { get; } = new(965.0 / 9.0);

    /// <summary>
    /// h2 = h1 + (h(p2, s1) - h1) / efficiency, without heat loss. Null where a state lies outside the superheated-vapour table.
    /// Source: first law and definition of the isentropic efficiency.
    /// </summary>
    /// <param name="suctionLine">At the compressor.</param>
    /// <param name="isentropicEfficiency">Above 0, at most 1.</param>
    public static CelsiusTemperature? Expected(
        Refrigerant refrigerant,
        AbsolutePressure suction,
        CelsiusTemperature suctionLine,
        AbsolutePressure discharge,
        double isentropicEfficiency = UsualEfficiency)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(isentropicEfficiency);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(isentropicEfficiency, 1);
        var vapour = refrigerant.Superheated;
        if (!vapour.Covers(suction, suctionLine)
            || !refrigerant.Saturation.TryDewTemperature(discharge, out var dew)
            || !vapour.DewTemperatures.Contains(dew)
            || vapour.TemperatureAtEntropy(discharge, vapour.Entropy(suction, suctionLine)) is not { } ideal)
        {
            return null;
        }

        var before = vapour.Enthalpy(suction, suctionLine);
        var after = before + ((vapour.Enthalpy(discharge, ideal) - before) / isentropicEfficiency);
        return vapour.TemperatureAtEnthalpy(discharge, after);
    }
}
