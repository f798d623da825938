using System.Collections.Frozen;
using System.Globalization;
using Assistant.Trade.Refrigerants;

namespace Assistant.App.Commands;

/// <summary>One line of the saturation command: a refrigerant, a quantity and the value it is asked at.</summary>
/// <param name="Value">As it was written.</param>
internal sealed record SaturationLine(string Refrigerant, string Quantity, string Value)
{
    private static readonly string[] Keys = ["refrigerant", "quantity", "value"];

    private static readonly FrozenDictionary<string, Func<SaturationTable, double, double>> Quantities =
        new Dictionary<string, Func<SaturationTable, double, double>>(StringComparer.Ordinal)
        {
            ["dew_pressure_at_c"] = (table, degrees) => table.DewPressure(new(degrees)).Pascals,
            ["bubble_pressure_at_c"] = (table, degrees) => table.BubblePressure(new(degrees)).Pascals,
            ["dew_temperature_at_pa"] = (table, pascals) => table.DewTemperature(new(pascals)).Degrees,
            ["bubble_temperature_at_pa"] = (table, pascals) => table.BubbleTemperature(new(pascals)).Degrees,
            ["liquid_density_at_c"] = (table, degrees) => table.LiquidDensity(new(degrees)).KilogramsPerCubicMeter,
            ["vapour_density_at_c"] = (table, degrees) => table.VapourDensity(new(degrees)).KilogramsPerCubicMeter,
        }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The three fields between tabs, or null with the key that is missing.</summary>
    public static SaturationLine? Parse(string text, out string missing)
    {
        var fields = text.Split('\t', StringSplitOptions.TrimEntries);
        missing = Keys.Where((_, i) => i >= fields.Length || fields[i].Length == 0).FirstOrDefault("");
        return missing.Length == 0 ? new(fields[0], fields[1], fields[2]) : null;
    }

    /// <summary>The result, or in its place one line on what cannot be served and what would be right.</summary>
    public (SaturationResult? Result, string Error) Evaluate()
    {
        if (RefrigerantLibrary.Find(Refrigerant) is not { } refrigerant)
        {
            return (null, $"No table for refrigerant \"{Refrigerant}\"; known are {string.Join(", ", RefrigerantLibrary.All.Select(r => r.Designation))}");
        }

        if (!Quantities.TryGetValue(Quantity, out var quantity))
        {
            return (null, $"No quantity \"{Quantity}\"; it is one of {string.Join(", ", Quantities.Keys.Order(StringComparer.Ordinal))}");
        }

        if (!double.TryParse(Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var input) || !double.IsFinite(input))
        {
            return (null, $"\"{Value}\" is not a number such as -10.5");
        }

        try
        {
            return (new(refrigerant.Designation, Quantity, input, quantity(refrigerant.Saturation, input)), "");
        }
        catch (OutOfTableException outside)
        {
            return (null, outside.Message);
        }
    }
}

/// <summary>What is printed for a line; pressures in Pa absolute, temperatures in degC, densities in kg/m3.</summary>
internal sealed record SaturationResult(string Refrigerant, string Quantity, double Input, double Value);
