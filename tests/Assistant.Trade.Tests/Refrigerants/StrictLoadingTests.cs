using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Tests.Refrigerants;

/// <summary>A table with one mistake is refused, and the error names file and line.</summary>
public sealed class StrictLoadingTests
{
    private const string File = "saturation/R134a.tsv";

    // The table has eight comment lines: the column names stand on line 9, the first row on line 10.
    [Fact]
    public void An_unknown_column_is_refused() => Refused(9, "h_liquid_j_kg", "enthalpy", "test.tsv:9: column h_liquid_j_kg is missing");

    [Fact]
    public void A_column_too_many_is_refused() => Refused(9, "t_c\t", "t_c\tcolour\t", "test.tsv:9: column colour is unknown");

    [Fact]
    public void Columns_in_another_order_are_refused() =>
        Refused(9, "p_bubble_pa\tp_dew_pa", "p_dew_pa\tp_bubble_pa", "test.tsv:9: columns must stand in the order t_c, p_bubble_pa");

    [Fact]
    public void A_cell_too_few_is_refused() => Refused(12, "-73\t", "", "test.tsv:12: 11 cells are expected, 10 are there");

    [Fact]
    public void A_cell_that_is_no_number_is_refused() => Refused(12, "-73\t", "cold\t", "test.tsv:12: \"cold\" is not a number");

    [Fact]
    public void A_value_that_is_not_finite_is_refused() => Refused(12, "1510.0588", "nan", "test.tsv:12: \"nan\" is not a number");

    [Fact]
    public void A_pressure_that_falls_is_refused() => Refused(12, "6385.1333\t6385.1333", "5900\t5900", "test.tsv:12: p_bubble_pa must rise with temperature");

    [Fact]
    public void A_liquid_density_that_rises_is_refused() => Refused(12, "1510.0588", "1520", "test.tsv:12: rho_liquid_kg_m3 must fall with temperature");

    [Fact]
    public void A_step_left_out_is_refused() => Refused(12, "-73\t", "-72\t", "test.tsv:12: t_c must rise by equal steps, -72 does not");

    [Fact]
    public void A_dew_pressure_above_the_bubble_pressure_is_refused() =>
        Refused(12, "6385.1333\t6385.1333", "6385.1333\t6400", "test.tsv:12: the dew pressure cannot be above the bubble pressure");

    [Fact]
    public void A_density_of_nothing_is_refused() => Refused(10, "0.34116127", "0", "test.tsv:10: rho_vapor_kg_m3 must be positive");

    [Fact]
    public void A_file_without_columns_is_refused()
    {
        var refused = Assert.Throws<TableFormatException>(() => SaturationTable.Read(new StringReader("# only this"), "test.tsv", "R0"));
        Assert.StartsWith("test.tsv:1: no line with the column names", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_of_four_rows_is_refused()
    {
        var text = string.Join('\n', TableText.Lines(File).Take(13));
        var refused = Assert.Throws<TableFormatException>(() => SaturationTable.Read(new StringReader(text), "test.tsv", "R0"));
        Assert.StartsWith("test.tsv:13: at least five rows are needed, 4 are there", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\t20\t", "\t21\t", "test.tsv:5: dew temperatures and superheats must form a full grid of equal rising steps")]
    [InlineData("382022.12", "300000", "test.tsv:5: enthalpy and entropy must rise and density must fall with superheat")]
    [InlineData("1919.4714", "1800", "test.tsv:5: enthalpy and entropy must rise and density must fall with superheat")]
    [InlineData("1.5052944", "1.7", "test.tsv:5: enthalpy and entropy must rise and density must fall with superheat")]
    public void A_superheat_table_that_is_no_rising_grid_is_refused(string from, string to, string message)
    {
        var lines = TableText.Lines("superheat/R448A.tsv");
        Assert.Contains(from, lines[4], StringComparison.Ordinal);
        lines[4] = lines[4].Replace(from, to, StringComparison.Ordinal);
        var refused = Assert.Throws<TableFormatException>(() =>
            SuperheatedVapour.Read(new StringReader(string.Join('\n', lines)), "test.tsv", "R448A", RefrigerantLibrary.Find("R448A")!.Saturation));
        Assert.Equal(message, refused.Message);
    }

    private static void Refused(int line, string from, string to, string message)
    {
        var lines = TableText.Lines(File);
        Assert.Contains(from, lines[line - 1], StringComparison.Ordinal);
        lines[line - 1] = lines[line - 1].Replace(from, to, StringComparison.Ordinal);
        var refused = Assert.Throws<TableFormatException>(() => SaturationTable.Read(new StringReader(string.Join('\n', lines)), "test.tsv", "R0"));
        Assert.StartsWith(message, refused.Message, StringComparison.Ordinal);
    }
}
