using System.Collections.Immutable;
using System.Globalization;
using Assistant.Trade.Quantities;

namespace Assistant.Trade.Refrigerants;

/// <summary>A line of summary.tsv: what a refrigerant is, without its tables.</summary>
internal sealed record RefrigerantSummary(
    string Designation,
    SafetyClass SafetyClass,
    ImmutableArray<RefrigerantComponent> Components,
    CelsiusTemperature CriticalTemperature,
    CelsiusTemperature? NormalBubblePoint,
    CelsiusTemperature? NormalDewPoint)
{
    private static readonly string[] Columns =
    [
        "name", "safety_class", "safety_source", "components", "mass_fractions", "molar_mass_g_mol", "tc_c", "pc_pa",
        "cricondentherm_c", "p_at_cricondentherm_pa", "nbp_bubble_c", "nbp_dew_c", "glide_1atm_k", "nbp_bubble_memory_c",
        "dev_bubble_k", "nbp_dew_memory_c", "dev_dew_k", "rows", "t_min_c", "t_max_c", "superheat_rows", "holdout_rows",
        "max_residual", "solver_fallbacks", "estimated_pairs", "warnings",
    ];

    public static ImmutableArray<RefrigerantSummary> ReadAll(TextReader text, string file) =>
        [.. TableFile.Read(text, file, Columns).Rows.Select(Of)];

    private static RefrigerantSummary Of(TableRow row) =>
        new(
            row.Text(0),
            Enum.TryParse<SafetyClass>(row.Text(1), out var safety) ? safety : throw row.Wrong($"\"{row.Text(1)}\" is not a safety class"),
            ComponentsOf(row),
            new(row.Number(6)),
            PointOf(row, 10),
            PointOf(row, 11));

    private static ImmutableArray<RefrigerantComponent> ComponentsOf(TableRow row)
    {
        var names = row.Text(3).Split('/');
        var shares = row.Text(4).Split(',');
        if (names.Length != shares.Length)
        {
            throw row.Wrong("components and mass_fractions differ in number");
        }

        var components = names.Zip(shares, (name, share) =>
            new RefrigerantComponent(
                name,
                double.TryParse(share, NumberStyles.Float, CultureInfo.InvariantCulture, out var percent)
                    ? percent / 100
                    : throw row.Wrong($"\"{share}\" is not a mass percentage"))).ToImmutableArray();
        return Math.Abs(components.Sum(c => c.MassFraction) - 1) < 1e-6 ? components : throw row.Wrong("mass_fractions must add up to 100");
    }

    private static CelsiusTemperature? PointOf(TableRow row, int column) => row.Text(column) == "nan" ? null : new(row.Number(column));
}
