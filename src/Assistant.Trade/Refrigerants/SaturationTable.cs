using System.Collections.Immutable;
using Assistant.Trade.Quantities;
using UnitsNet;

namespace Assistant.Trade.Refrigerants;

/// <summary>
/// Bubble and dew points of one refrigerant. Liquid values are at the bubble point, vapour values at the dew point of the
/// temperature. Reference state IIR: h = 200 kJ/kg, s = 1 kJ/(kg K) for bubble liquid at 0 degC. Outside its range the table
/// throws <see cref="OutOfTableException"/>; the Try forms return false. Within about 3 K of the critical point values are rough.
/// </summary>
public sealed class SaturationTable
{
    private readonly string designation;
    private readonly SaturationCurves curves;

    private SaturationTable(string designation, SaturationCurves curves, ImmutableArray<string> provenance)
    {
        this.designation = designation;
        this.curves = curves;
        Provenance = provenance;
        Temperatures = new(new(curves.Lowest), new(curves.Highest));
        DewPressures = new(new(curves.Dew.Lowest), new(curves.Dew.Highest));
        BubblePressures = new(new(curves.Bubble.Lowest), new(curves.Bubble.Highest));
    }

    /// <summary>The header lines of the table's file.</summary>
    public ImmutableArray<string> Provenance { get; }

    public TableRange<CelsiusTemperature> Temperatures { get; }

    public TableRange<AbsolutePressure> DewPressures { get; }

    public TableRange<AbsolutePressure> BubblePressures { get; }

    /// <summary>Reads a table strictly: an unknown or missing column, a cell that is no number, rows that do not rise by equal steps are a <see cref="TableFormatException"/> naming file and line.</summary>
    /// <param name="text">Comment lines, a line of column names, tab-separated rows.</param>
    /// <param name="file">The name an error gives.</param>
    public static SaturationTable Read(TextReader text, string file, string designation)
    {
        var (curves, provenance) = SaturationCurves.Read(text, file);
        return new(designation, curves, provenance);
    }

    /// <summary>The pressure at which vapour of this temperature begins to condense.</summary>
    public AbsolutePressure DewPressure(CelsiusTemperature dewTemperature) => new(curves.Dew.PascalsAt(Inside(dewTemperature)));

    /// <summary>The pressure at which liquid of this temperature begins to boil.</summary>
    public AbsolutePressure BubblePressure(CelsiusTemperature bubbleTemperature) => new(curves.Bubble.PascalsAt(Inside(bubbleTemperature)));

    public CelsiusTemperature DewTemperature(AbsolutePressure pressure) => new(curves.Dew.DegreesAt(Inside(pressure, DewPressures, "dew pressure")));

    public CelsiusTemperature BubbleTemperature(AbsolutePressure pressure) => new(curves.Bubble.DegreesAt(Inside(pressure, BubblePressures, "bubble pressure")));

    public bool TryDewPressure(CelsiusTemperature dewTemperature, out AbsolutePressure pressure)
    {
        var inside = Temperatures.Contains(dewTemperature);
        pressure = inside ? DewPressure(dewTemperature) : default;
        return inside;
    }

    public bool TryBubblePressure(CelsiusTemperature bubbleTemperature, out AbsolutePressure pressure)
    {
        var inside = Temperatures.Contains(bubbleTemperature);
        pressure = inside ? BubblePressure(bubbleTemperature) : default;
        return inside;
    }

    public bool TryDewTemperature(AbsolutePressure pressure, out CelsiusTemperature dewTemperature)
    {
        var inside = DewPressures.Contains(pressure);
        dewTemperature = inside ? DewTemperature(pressure) : default;
        return inside;
    }

    public bool TryBubbleTemperature(AbsolutePressure pressure, out CelsiusTemperature bubbleTemperature)
    {
        var inside = BubblePressures.Contains(pressure);
        bubbleTemperature = inside ? BubbleTemperature(pressure) : default;
        return inside;
    }

    public Density LiquidDensity(CelsiusTemperature bubbleTemperature) => Density.FromKilogramsPerCubicMeter(curves.LiquidDensity.At(Inside(bubbleTemperature)));

    public Density VapourDensity(CelsiusTemperature dewTemperature) => Density.FromKilogramsPerCubicMeter(Math.Exp(curves.LogVapourDensity.At(Inside(dewTemperature))));

    public SpecificEnergy LiquidEnthalpy(CelsiusTemperature bubbleTemperature) => SpecificEnergy.FromJoulesPerKilogram(curves.LiquidEnthalpy.At(Inside(bubbleTemperature)));

    public SpecificEnergy VapourEnthalpy(CelsiusTemperature dewTemperature) => SpecificEnergy.FromJoulesPerKilogram(curves.VapourEnthalpy.At(Inside(dewTemperature)));

    public SpecificEntropy LiquidEntropy(CelsiusTemperature bubbleTemperature) => SpecificEntropy.FromJoulesPerKilogramKelvin(curves.LiquidEntropy.At(Inside(bubbleTemperature)));

    public SpecificEntropy VapourEntropy(CelsiusTemperature dewTemperature) => SpecificEntropy.FromJoulesPerKilogramKelvin(curves.VapourEntropy.At(Inside(dewTemperature)));

    private double Inside(CelsiusTemperature temperature) =>
        Temperatures.Contains(temperature)
            ? temperature.Degrees
            : throw OutOfTableException.For(designation, "saturation temperature", temperature.Degrees, Temperatures.Lowest.Degrees, Temperatures.Highest.Degrees, "degC");

    private double Inside(AbsolutePressure pressure, in TableRange<AbsolutePressure> range, string quantity) =>
        range.Contains(pressure)
            ? pressure.Pascals
            : throw OutOfTableException.For(designation, quantity, pressure.Pascals, range.Lowest.Pascals, range.Highest.Pascals, "Pa absolute");
}
