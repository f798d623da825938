using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Tests.Refrigerants;

public sealed class RefrigerantLibraryTests
{
    [Fact]
    public void Thirty_three_refrigerants_are_known_and_all_their_tables_load()
    {
        Assert.Equal(33, RefrigerantLibrary.All.Length);
        Assert.All(RefrigerantLibrary.All, r => Assert.NotEmpty(r.Provenance));
        Assert.All(RefrigerantLibrary.All, r => Assert.True(r.Superheated.Superheats.Highest.Kelvins == 100));
    }

    [Theory]
    [InlineData("R-448A", "R448A")]
    [InlineData("r448a", "R448A")]
    [InlineData("448A", "R448A")]
    [InlineData("R404A", "R404A")]
    [InlineData("R 404 a", "R404A")]
    [InlineData("134a", "R134a")]
    [InlineData("R-1234ze(E)", "R1234ze(E)")]
    [InlineData("1234ze", "R1234ze(E)")]
    [InlineData("propane", "R290")]
    [InlineData("CO2", "R744")]
    public void A_refrigerant_is_found_however_it_is_written(string text, string designation) =>
        Assert.Equal(designation, RefrigerantLibrary.Find(text)?.Designation);

    [Theory]
    [InlineData("R502")]
    [InlineData("R")]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("R4040A")]
    public void What_has_no_table_is_not_known(string? text) => Assert.Null(RefrigerantLibrary.Find(text));

    [Fact]
    public void A_blend_knows_its_components_by_mass()
    {
        var r448a = RefrigerantLibrary.Find("R448A")!;
        Assert.Equal(SafetyClass.A1, r448a.SafetyClass);
        Assert.Equal(["R32", "R125", "R1234yf", "R134a", "R1234ze(E)"], r448a.Components.Select(c => c.Name));
        Assert.Equal([0.26, 0.26, 0.20, 0.21, 0.07], r448a.Components.Select(c => c.MassFraction));
        Assert.True(r448a.IsBlend);
        Assert.False(RefrigerantLibrary.Find("R290")!.IsBlend);
    }

    [Fact]
    public void The_data_carries_a_version_of_twelve_hexadecimal_digits() => Assert.Matches("^[0-9a-f]{12}$", RefrigerantLibrary.DataVersion);
}
