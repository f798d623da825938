using Assistant.Trade.Refrigerants;
using Assistant.Trade.Regulations;
using static Assistant.Trade.Tests.Regulations.RegulationScene;

namespace Assistant.Trade.Tests.Regulations;

public class GwpTableTests
{
    // Components: IPCC AR4, 100 years, as in 40 CFR 98 table A-1. Mixtures weighted by mass, by hand; in brackets the rounded values
    // in common use: R404A (3922), R507A (3985), R410A (2088), R407A (2107), R407C (1774), R452A (2140), R448A (1387), R454C (148, with 4 for R1234yf).
    [Theory]
    [InlineData("R134a", 1430)]
    [InlineData("R404A", 3921.6)]
    [InlineData("R507A", 3985)]
    [InlineData("R410A", 2087.5)]
    [InlineData("R407A", 2107)]
    [InlineData("R407C", 1773.85)]
    [InlineData("R452A", 2139.55)]
    [InlineData("R448A", 1386.07)]
    [InlineData("R454C", 145.91)]
    [InlineData("R22", 1810)]
    [InlineData("R744", 1)]
    public void A_mixture_is_weighted_by_mass(string refrigerant, double gwp) =>
        Assert.Equal(gwp, GwpTable.Shipped.Of(Composition(refrigerant), Jurisdiction.UnitedStates), 6);

    // R448A: 0.26·675 + 0.26·3500 + 0.20·0.501 + 0.21·1430 + 0.07·1.37 = 1385.9961; Regulation (EU) 2024/573 annexes I and II.
    [Theory]
    [InlineData("R448A", 1385.9961)]
    [InlineData("R1234yf", 0.501)]
    [InlineData("R134a", 1430)]
    [InlineData("R290", 0.02)]
    [InlineData("R600a", 0)]
    [InlineData("R717", 0)]
    public void The_European_annex_departs_for_the_unsaturated_and_the_hydrocarbons(string refrigerant, double gwp) =>
        Assert.Equal(gwp, GwpTable.Shipped.Of(Composition(refrigerant), Jurisdiction.EuropeanUnion), 6);

    [Fact]
    public void Every_component_of_the_library_has_a_value() =>
        Assert.All(RefrigerantLibrary.All, r => Assert.InRange(GwpTable.Shipped.Of(r.Components, Jurisdiction.EuropeanUnion), 0, 10_900));

    [Fact]
    public void An_unknown_component_is_an_error_and_not_a_zero() =>
        Assert.Equal("R999", Assert.Throws<UnknownSubstanceException>(() => GwpTable.Shipped.Of([new("R999", 1)], Jurisdiction.UnitedStates)).Substance);

    [Fact]
    public void The_table_says_where_it_comes_from_and_that_it_was_read()
    {
        Assert.Equal(SourceBasis.Published, GwpTable.Shipped.Basis);
        Assert.Contains("2024/573", GwpTable.Shipped.Source, StringComparison.Ordinal);
        Assert.Equal(Day("2026-11-25"), GwpTable.Shipped.DateRead);
    }
}
