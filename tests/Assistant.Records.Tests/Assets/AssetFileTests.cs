using Assistant.Records.Assets;
using Assistant.Records.Tests.Support;
using Assistant.Trade.Facts;

namespace Assistant.Records.Tests.Assets;

public class AssetFileTests
{
    [Fact]
    public async Task The_invented_unit_that_is_shipped_reads_and_is_recorded()
    {
        await using var records = await TemporaryRecords.OpenAsync();
        var asset = AssetFile.Read(await File.ReadAllTextAsync(Repository.PathOf("shared", "demo", "asset.json")));
        var store = new AssetStore(records.Database);

        await store.RecordAsync(asset, Invented.Morning);

        var found = await store.FindAsync("demo-diner-cooler");
        Assert.Equal("Invented Diner, Pine Street", found!.Site);
        Assert.Equal("R448A", found.Details["refrigerant"]);
        Assert.Equal("invented orifice 3", found.Details["valve_orifice"]);
        Assert.All(found.Details.Keys.Intersect(AssetFacts.Kept), name => Assert.NotNull(FactCatalogue.Find(name)));
        Assert.Equal("demo-diner-cooler", Assert.Single(await store.ListAsync()).Id);
    }

    [Theory]
    [InlineData("""{"id": "a", "site": "s", "unit": "u", "colour": "red"}""", "colour: no such key; an asset has notice, id, site, unit, units, details.")]
    [InlineData("""{"id": "a", "unit": "u"}""", "site: is missing or no text.")]
    [InlineData("""{"id": "a", "site": "s", "unit": "u", "details": {"Full Charge": "12 lb"}}""", "details.Full Charge: a detail is a snake_case name and a text, such as \"full_charge\": \"12 lb\".")]
    [InlineData("""{"id": "a", "site": "s", "unit": "u", "details": {"full_charge": 12}}""", "details.full_charge: a detail is a snake_case name and a text, such as \"full_charge\": \"12 lb\".")]
    public void A_mistake_is_named_with_its_key(string json, string message) =>
        Assert.Equal(message, Assert.Throws<FormatException>(() => AssetFile.Read(json)).Message);

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{\"id\": ")]
    public void What_is_not_an_asset_is_refused(string json) =>
        Assert.StartsWith("This is not an asset as JSON", Assert.Throws<FormatException>(() => AssetFile.Read(json)).Message, StringComparison.Ordinal);
}
