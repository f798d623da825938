using System.Collections.Immutable;

namespace Assistant.Trade.Refrigerants;

/// <summary>The curves of a saturation table over temperature in degC: pressures in Pa absolute, densities in kg/m3, enthalpies in J/kg, entropies in J/(kg K).</summary>
internal sealed record SaturationCurves(
    double Lowest,
    double Highest,
    LogPressureCurve Bubble,
    LogPressureCurve Dew,
    UniformCubic LiquidDensity,
    UniformCubic LogVapourDensity,
    UniformCubic LiquidEnthalpy,
    UniformCubic VapourEnthalpy,
    UniformCubic LiquidEntropy,
    UniformCubic VapourEntropy)
{
    // For pure fluids the file gives bubble and dew pressure with the same digits; blends agree at the ends of their glide to solver noise.
    private const double Noise = 1e-6;

    private static readonly string[] Columns =
    [
        "t_c", "p_bubble_pa", "p_dew_pa", "rho_liquid_kg_m3", "rho_vapor_kg_m3", "h_liquid_j_kg", "h_vapor_j_kg",
        "s_liquid_j_kgk", "s_vapor_j_kgk", "cp_liquid_j_kgk", "cp_vapor_j_kgk",
    ];

    /// <summary>The curves through the rows of a file, which must stand at equal steps, with pressures and vapour density rising and liquid density falling; and its comment lines.</summary>
    public static (SaturationCurves Curves, ImmutableArray<string> Provenance) Read(TextReader text, string file)
    {
        var table = TableFile.Read(text, file, Columns);
        var rows = table.Rows;
        if (rows.Length < 5)
        {
            throw TableFormatException.At(file, table.Lines, $"at least five rows are needed, {rows.Length} are there");
        }

        var first = rows[0].Number(0);
        var step = rows[1].Number(0) - first;
        Check(rows, first, step);
        double[] Column(int column) => [.. rows.Select(r => r.Number(column))];
        UniformCubic Curve(double[] values, bool monotone = false) => UniformCubic.Through(first, step, values, monotone);
        SaturationCurves curves = new(
            first,
            rows[^1].Number(0),
            new(first, step, Column(1)),
            new(first, step, Column(2)),
            Curve(Column(3), monotone: true),
            Curve([.. Column(4).Select(d => Math.Log(d))], monotone: true),
            Curve(Column(5), monotone: true),
            Curve(Column(6)),
            Curve(Column(7), monotone: true),
            Curve(Column(8)));
        return (curves, table.Comments);
    }

    private static void Check(ImmutableArray<TableRow> rows, double first, double step)
    {
        for (var i = 0; i < rows.Length; i++)
        {
            var row = rows[i];
            if (i > 0 && !(Math.Abs(row.Number(0) - first - (i * step)) < 1e-9 && step > 0))
            {
                throw row.Wrong($"t_c must rise by equal steps, {row.Text(0)} does not");
            }

            for (var column = 1; column < Columns.Length; column++)
            {
                var value = row.Number(column);

                // Liquid enthalpy and entropy count from 0 degC and may be negative in the cold.
                if (value <= 0 && column is not (5 or 7))
                {
                    throw row.Wrong($"{Columns[column]} must be positive");
                }

                // Vapour enthalpy and entropy turn round on the way to the critical point; heat capacities may.
                var direction = column switch { 1 or 2 or 4 or 5 or 7 => 1, 3 => -1, _ => 0 };
                if (i > 0 && direction != 0 && !((value - rows[i - 1].Number(column)) * direction > 0))
                {
                    throw row.Wrong($"{Columns[column]} must {(direction > 0 ? "rise" : "fall")} with temperature");
                }
            }

            if (row.Number(2) > row.Number(1) * (1 + Noise))
            {
                throw row.Wrong("the dew pressure cannot be above the bubble pressure");
            }
        }
    }
}
