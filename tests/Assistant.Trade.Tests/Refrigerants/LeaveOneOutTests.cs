using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Tests.Refrigerants;

/// <summary>Every other row of each table is taken away; the curves through the rest must find it again.</summary>
public sealed class LeaveOneOutTests
{
    private const double Kelvin = 0.01;
    private const double Relative = 0.0005;

    // A hundredth of a kelvin in vapour or liquid is about this much.
    private const double JoulesPerKilogram = 30;
    private const double JoulesPerKilogramKelvin = 0.1;

    public static TheoryData<string> Designations => [.. RefrigerantLibrary.All.Select(r => r.Designation)];

    [Theory]
    [MemberData(nameof(Designations))]
    public void The_rows_left_out_are_found_again_from_the_rows_kept(string designation)
    {
        var file = $"saturation/{designation}.tsv";
        var lines = TableText.Lines(file);
        var body = Array.FindIndex(lines, l => l[0] != '#') + 1;
        var kept = lines.Where((_, i) => i < body || (i - body) % 2 == 0);
        var table = SaturationTable.Read(new StringReader(string.Join('\n', kept)), file, designation);
        var rows = TableText.Rows(file);
        var leftOut = rows.Where((row, i) => i % 2 == 1 && row[0] < rows[^1][0] - 5).ToList();
        Assert.True(leftOut.Count > 35);
        Assert.All(leftOut, row =>
        {
            var t = new CelsiusTemperature(row[0]);
            Within(Relative, row[1], table.BubblePressure(t).Pascals);
            Within(Relative, row[2], table.DewPressure(t).Pascals);
            Within(Relative, row[3], table.LiquidDensity(t).KilogramsPerCubicMeter);
            Within(Relative, row[4], table.VapourDensity(t).KilogramsPerCubicMeter);
            Assert.Equal(row[5], table.LiquidEnthalpy(t).JoulesPerKilogram, JoulesPerKilogram);
            Assert.Equal(row[6], table.VapourEnthalpy(t).JoulesPerKilogram, JoulesPerKilogram);
            Assert.Equal(row[7], table.LiquidEntropy(t).JoulesPerKilogramKelvin, JoulesPerKilogramKelvin);
            Assert.Equal(row[8], table.VapourEntropy(t).JoulesPerKilogramKelvin, JoulesPerKilogramKelvin);
            Assert.InRange(table.BubbleTemperature(new(row[1])).Degrees, row[0] - Kelvin, row[0] + Kelvin);
            Assert.InRange(table.DewTemperature(new(row[2])).Degrees, row[0] - Kelvin, row[0] + Kelvin);
        });
    }

    [Theory]
    [MemberData(nameof(Designations))]
    public void Superheated_vapour_at_its_dew_point_agrees_with_the_saturation_table_between_its_own_rows(string designation)
    {
        var refrigerant = RefrigerantLibrary.Find(designation)!;
        var vapour = refrigerant.Superheated;
        var rows = TableText.Rows($"saturation/{designation}.tsv")
            .Where(row => row[0] >= vapour.DewTemperatures.Lowest.Degrees && row[0] <= vapour.DewTemperatures.Highest.Degrees);
        Assert.All(rows, row =>
        {
            var (p, t) = (refrigerant.Saturation.DewPressure(new(row[0])), new CelsiusTemperature(row[0] + 1e-7));
            Within(Relative, row[4], vapour.Density(p, t).KilogramsPerCubicMeter);
            Within(Relative, row[6], vapour.Enthalpy(p, t).JoulesPerKilogram);
            Within(Relative, row[8], vapour.Entropy(p, t).JoulesPerKilogramKelvin);
        });
    }

    private static void Within(double relative, double expected, double actual) =>
        Assert.InRange(actual, expected * (1 - relative), expected * (1 + relative));
}
