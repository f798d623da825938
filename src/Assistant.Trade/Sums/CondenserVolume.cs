using UnitsNet;

namespace Assistant.Trade.Sums;

/// <summary>What a condenser holds, from its tubes.</summary>
public static class CondenserVolume
{
    /// <summary>tubes * length * pi/4 * bore^2: the straight tubes; return bends and headers come on top. Source: geometry.</summary>
    /// <param name="bore">Inside diameter.</param>
    public static Volume FromTubes(int tubes, Length length, Length bore) =>
        Volume.FromCubicMeters(tubes * length.Meters * Math.PI / 4 * bore.Meters * bore.Meters);
}
