using Assistant.Trade.Quantities;

namespace Assistant.Trade.Sums;

/// <summary>What pressure a leak search needs.</summary>
public static class LeakSearch
{
    /// <summary>Under this too little gas comes out of a small leak to be found: 30 psig, 207 kPa gauge. Common practice.</summary>
    public static GaugePressure LeastPressure { get; } = new(UnitOfMeasure.Psig.ToCanonical(30) * 1000);

    /// <summary>Under this there is no charge left and air may have come in: 2 psig, 14 kPa gauge. Common practice.</summary>
    public static GaugePressure Empty { get; } = new(UnitOfMeasure.Psig.ToCanonical(2) * 1000);
}
