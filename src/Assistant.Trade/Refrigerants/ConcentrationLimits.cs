using System.Collections.Frozen;
using UnitsNet;

namespace Assistant.Trade.Refrigerants;

/// <summary>
/// The ASHRAE Standard 34 refrigerant concentration limits (RCL): recalled from memory, so every answer that rests on one says
/// that the current table must be checked.
/// </summary>
public static class ConcentrationLimits
{
    private const string File = "concentration-limits.tsv";

    private static readonly Lazy<FrozenDictionary<string, MassConcentration>> Limits = new(Read);

    /// <summary>Greatest mass a volume of room air in an occupied space; null where no value is remembered.</summary>
    public static MassConcentration? Of(Refrigerant refrigerant) =>
        Limits.Value.TryGetValue(refrigerant.Designation, out var limit) ? limit : null;

    private static FrozenDictionary<string, MassConcentration> Read()
    {
        using var text = RefrigerantLibrary.Open(File);
        return TableFile.Read(text, File, "name", "rcl_g_m3", "rcl_ppm_volume").Rows.ToFrozenDictionary(
            row => RefrigerantLibrary.Find(row.Text(0))?.Designation ?? throw row.Wrong($"\"{row.Text(0)}\" is not in the library"),
            row => MassConcentration.FromGramsPerCubicMeter(row.Number(1) > 0 ? row.Number(1) : throw row.Wrong("a limit must be positive")),
            StringComparer.Ordinal);
    }
}
