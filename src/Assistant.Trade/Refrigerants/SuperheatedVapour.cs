using Assistant.Trade.Quantities;
using UnitsNet;

namespace Assistant.Trade.Refrigerants;

/// <summary>
/// Vapour above its dew point, by pressure and temperature; same model and reference state as <see cref="SaturationTable"/>.
/// A cubic surface over dew temperature and superheat. Outside the table it throws <see cref="OutOfTableException"/>;
/// <see cref="Covers"/> tells beforehand.
/// </summary>
public sealed class SuperheatedVapour
{
    private readonly string designation;
    private readonly SaturationTable saturation;
    private readonly CubicSurface enthalpy;
    private readonly CubicSurface entropy;
    private readonly CubicSurface compressibility;

    private SuperheatedVapour(string designation, SaturationTable saturation, CubicSurface enthalpy, CubicSurface entropy, CubicSurface compressibility)
    {
        this.designation = designation;
        this.saturation = saturation;
        this.enthalpy = enthalpy;
        this.entropy = entropy;
        this.compressibility = compressibility;
    }

    /// <summary>The dew temperatures of the pressures that are covered.</summary>
    public TableRange<CelsiusTemperature> DewTemperatures => new(new(enthalpy.FirstX), new(enthalpy.LastX));

    /// <summary>The superheats that are covered, from the dew point up.</summary>
    public TableRange<TemperatureDifference> Superheats => new(new(enthalpy.FirstY), new(enthalpy.LastY));

    public bool Covers(AbsolutePressure pressure, CelsiusTemperature temperature) =>
        saturation.TryDewTemperature(pressure, out var dew) && DewTemperatures.Contains(dew) && Superheats.Contains(temperature - dew);

    public SpecificEnergy Enthalpy(AbsolutePressure pressure, CelsiusTemperature temperature) =>
        SpecificEnergy.FromJoulesPerKilogram(At(enthalpy, pressure, temperature));

    public SpecificEntropy Entropy(AbsolutePressure pressure, CelsiusTemperature temperature) =>
        SpecificEntropy.FromJoulesPerKilogramKelvin(At(entropy, pressure, temperature));

    public Density Density(AbsolutePressure pressure, CelsiusTemperature temperature) =>
        UnitsNet.Density.FromKilogramsPerCubicMeter(pressure.Pascals / (At(compressibility, pressure, temperature) * temperature.Kelvins));

    /// <summary>The temperature at which vapour of this pressure has this entropy; null where the table does not reach it.</summary>
    public CelsiusTemperature? TemperatureAtEntropy(AbsolutePressure pressure, SpecificEntropy wanted) =>
        TemperatureAt(entropy, pressure, wanted.JoulesPerKilogramKelvin);

    /// <summary>The temperature at which vapour of this pressure has this enthalpy; null where the table does not reach it.</summary>
    public CelsiusTemperature? TemperatureAtEnthalpy(AbsolutePressure pressure, SpecificEnergy wanted) =>
        TemperatureAt(enthalpy, pressure, wanted.JoulesPerKilogram);

    /// <summary>Reads a table as strictly as <see cref="SaturationTable.Read"/>; its rows must form a full grid.</summary>
    public static SuperheatedVapour Read(TextReader text, string file, string designation, SaturationTable saturation)
    {
        var grid = SuperheatGrid.Read(text, file);
        return new(
            designation,
            saturation,
            grid.Surface((_, _, row) => row.Enthalpy),
            grid.Surface((_, _, row) => row.Entropy),
            grid.Surface((dew, superheat, row) => row.Pascals / (row.Density * (dew + superheat + 273.15))));
    }

    private double At(CubicSurface surface, AbsolutePressure pressure, CelsiusTemperature temperature)
    {
        var dew = DewTemperature(pressure);
        var superheat = temperature - dew;
        return Superheats.Contains(superheat)
            ? surface.At(dew.Degrees, superheat.Kelvins)
            : throw OutOfTableException.For(designation, "superheat", superheat.Kelvins, Superheats.Lowest.Kelvins, Superheats.Highest.Kelvins, "K");
    }

    private CelsiusTemperature DewTemperature(AbsolutePressure pressure)
    {
        var dew = saturation.DewTemperature(pressure);
        return DewTemperatures.Contains(dew)
            ? dew
            : throw OutOfTableException.For(designation, "dew temperature of vapour", dew.Degrees, DewTemperatures.Lowest.Degrees, DewTemperatures.Highest.Degrees, "degC");
    }

    // Enthalpy and entropy rise with temperature at a given pressure, so halving closes in on the one answer.
    private CelsiusTemperature? TemperatureAt(CubicSurface surface, AbsolutePressure pressure, double wanted)
    {
        var dew = DewTemperature(pressure);
        var (low, high) = (surface.FirstY, surface.LastY);
        if (!(wanted >= surface.At(dew.Degrees, low) && wanted <= surface.At(dew.Degrees, high)))
        {
            return null;
        }

        while (high - low > 1e-9)
        {
            var middle = (low + high) / 2;
            (low, high) = surface.At(dew.Degrees, middle) < wanted ? (middle, high) : (low, middle);
        }

        return dew + new TemperatureDifference((low + high) / 2);
    }
}
