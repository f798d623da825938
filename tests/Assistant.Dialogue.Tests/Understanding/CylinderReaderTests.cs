using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Ledgers;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Understanding;

public sealed class CylinderReaderTests
{
    [Theory]
    [InlineData("cylinder 14, tare 27 lb, weighs 48 lb 6 oz", "14 tare 27 weighs 48.375")]
    [InlineData("Cyl #14 weighs 48 lb 6 oz", "14 weighs 48.375")]
    [InlineData("cylinder fourteen tare twenty seven pounds", "14 tare 27")]
    [InlineData("bottle R three weighs thirty pounds", "R3 weighs 30")]
    [InlineData("now 43 lb 2", "weighs 43.125")]
    [InlineData("down to 43 pounds 2 ounces", "weighs 43.125")]
    [InlineData("recovered into tank R3, before 31 lb, after 38 lb 4 oz", "R3 before 31 after 38.25 Recover")]
    [InlineData("recovery tank INV-07: 31 lb before, 38 lb after", "INV-07 before 31 after 38")]
    [InlineData("hose loss 2 oz", "loss 0.125")]
    [InlineData("lost 2 oz in the hoses", "loss 0.125")]
    [InlineData("2 oz lost in the hoses", "loss 0.125")]
    [InlineData("charged 5 lb 4 oz from cylinder 14", "14 amount 5.25 Charge")]
    [InlineData("put in 3 lb from cylinder 14, hose loss 1 oz", "14 amount 3 loss 0.0625 Charge")]
    [InlineData("moved 2 lb from cylinder 14", "14 amount 2 Transfer")]
    [InlineData("cylinder R3 wc 47.7 lb", "R3 capacity 47.7")]
    [InlineData("cylinder 14", "14")]
    public void A_cylinder_told_of_is_read(string text, string expected) => Assert.Equal(expected, Read(text));

    [Theory]
    [InlineData("suction 24 psi")]
    [InlineData("the system lost 5 lb since spring")]
    [InlineData("cylinder 14 suction pressure 24 psi")]
    [InlineData("it is -4 in the box")]
    [InlineData("nothing to see here")]
    public void What_is_of_something_else_is_left_alone(string text) =>
        Assert.Null(LexiconFiles.Understander.Understand(text, new(null, UnitSystem.Us)).Cylinder is { HasMass: true } told ? Describe(told) : null);

    [Fact]
    public void A_number_with_a_unit_behind_the_word_is_a_weight_and_no_tag() =>
        Assert.Equal("unnamed 48.375", Read("cylinder 48 lb 6 oz"));

    [Fact]
    public void A_refrigerant_behind_the_word_is_no_tag()
    {
        var told = LexiconFiles.Understander.Understand("tank R22, tare 27 lb", new(null, UnitSystem.Us)).Cylinder!;

        Assert.Equal((null, "R22"), (told.Tag, told.Refrigerant));
    }

    [Fact]
    public void A_bare_number_is_in_the_sites_unit() =>
        Assert.Equal(12_200, LexiconFiles.Understander.Understand("tare 12.2", new(FactCatalogue.CylinderTare, UnitSystem.Metric)).Cylinder!.Tare!.Value.Value);

    private static string Read(string text) => Describe(LexiconFiles.Understander.Understand(text, new(null, UnitSystem.Us)).Cylinder!);

    private static string Describe(CylinderTold told)
    {
        var masses = new (string Name, Grams? Mass)[]
        {
            ("tare", told.Tare), ("before", told.Before), ("after", told.After), ("weighs", told.Weighs), ("amount", told.Amount), ("loss", told.Loss), ("capacity", told.WaterCapacity), ("unnamed", told.Unnamed),
        };

        // One pound is 453.59237 g (exact by definition).
        var said = masses.Where(m => m.Mass is not null).Select(m => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{m.Name} {Math.Round(m.Mass!.Value.Value / 453.59237 * 160) / 160:0.####}"));
        return string.Join(' ', new[] { told.Tag }.Concat(said).Append(told.Purpose?.ToString()).Where(p => p is not null));
    }
}
