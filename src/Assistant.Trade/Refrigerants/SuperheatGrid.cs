namespace Assistant.Trade.Refrigerants;

/// <summary>The rows of a superheat file as a full grid: every dew temperature with every superheat, both at equal steps.</summary>
internal sealed class SuperheatGrid
{
    private static readonly string[] Columns = ["t_dew_c", "p_pa", "superheat_k", "rho_kg_m3", "h_j_kg", "s_j_kgk", "cp_j_kgk"];

    private readonly double[] dews;
    private readonly double[] superheats;
    private readonly VapourState[,] states;

    private SuperheatGrid(double[] dews, double[] superheats, VapourState[,] states)
    {
        this.dews = dews;
        this.superheats = superheats;
        this.states = states;
    }

    public static SuperheatGrid Read(TextReader text, string file)
    {
        var table = TableFile.Read(text, file, Columns);
        var rows = table.Rows;
        double[] dews = [.. rows.Select(r => r.Number(0)).Distinct()];
        double[] superheats = [.. rows.Select(r => r.Number(2)).Distinct()];
        if (dews.Length < 4 || superheats.Length < 4)
        {
            throw TableFormatException.At(file, table.Lines, "at least four dew temperatures and four superheats are needed");
        }

        var states = new VapourState[dews.Length, superheats.Length];
        for (var n = 0; n < rows.Length; n++)
        {
            var row = rows[n];
            var (i, j) = (n / superheats.Length, n % superheats.Length);
            if (i >= dews.Length || !IsStep(dews, i, row.Number(0)) || !IsStep(superheats, j, row.Number(2)))
            {
                throw row.Wrong("dew temperatures and superheats must form a full grid of equal rising steps");
            }

            states[i, j] = new(row.Number(1), row.Number(3), row.Number(4), row.Number(5));
            if (j > 0 && !(states[i, j].Enthalpy > states[i, j - 1].Enthalpy && states[i, j].Entropy > states[i, j - 1].Entropy && states[i, j].Density < states[i, j - 1].Density))
            {
                throw row.Wrong("enthalpy and entropy must rise and density must fall with superheat");
            }

            if (i > 0 && !(states[i, j].Pascals > states[i - 1, j].Pascals))
            {
                throw row.Wrong("p_pa must rise with t_dew_c");
            }
        }

        return rows.Length == dews.Length * superheats.Length ? new(dews, superheats, states) : throw TableFormatException.At(file, table.Lines, "the grid is not full");
    }

    /// <summary>A surface over the grid of what <paramref name="value"/> makes of dew temperature (degC), superheat (K) and state.</summary>
    public CubicSurface Surface(Func<double, double, VapourState, double> value)
    {
        var values = new double[dews.Length, superheats.Length];
        for (var i = 0; i < dews.Length; i++)
        {
            for (var j = 0; j < superheats.Length; j++)
            {
                values[i, j] = value(dews[i], superheats[j], states[i, j]);
            }
        }

        return new(dews[0], dews[1] - dews[0], superheats[0], superheats[1] - superheats[0], values);
    }

    private static bool IsStep(double[] steps, int i, double value) =>
        steps[1] > steps[0] && Math.Abs(value - steps[0] - (i * (steps[1] - steps[0]))) < 1e-9;
}

/// <summary>A state of superheated vapour: Pa absolute, kg/m3, J/kg, J/(kg K).</summary>
internal readonly record struct VapourState(double Pascals, double Density, double Enthalpy, double Entropy);
