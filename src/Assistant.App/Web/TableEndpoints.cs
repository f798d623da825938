using System.Globalization;
using System.Text.Json;
using Assistant.App.Hosting;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;

namespace Assistant.App.Web;

/// <summary>What the page needs to answer without the program: the saturation tables, the units, and the facts with how each is entered.</summary>
internal static class TableEndpoints
{
    /// <summary>Digits of a pressure in the tables: half a digit in the sixth is less than a ten-thousandth of a kelvin.</summary>
    private const string SixDigits = "G6";

    private static readonly Lazy<byte[]> Tables = new(Write);

    public static void MapTables(this WebApplication app)
    {
        app.MapGet("/tables.json", () => TypedResults.Bytes(Tables.Value, "application/json"));
        app.MapGet("/api/facts", (string? units, CallRoom room) => ReadingViews.Catalogue(RequestRules.Units(units), room.Dialogue.Phrases).ToList());
    }

    private static byte[] Write() => JsonSerializer.SerializeToUtf8Bytes(
        new
        {
            version = RefrigerantLibrary.DataVersion,
            units = UnitOfMeasure.All
                .Where(u => u.Dimension is not (Dimension.Ratio or Dimension.Time or Dimension.Current or Dimension.Voltage))
                .Select(u => new { symbol = u.Symbol, dimension = u.Dimension.ToString(), scale = u.ToCanonical(1) - u.ToCanonical(0), offset = u.ToCanonical(0), absolute = u.IsAbsolutePressure }),
            refrigerants = RefrigerantLibrary.All.Select(r => Table(r.Designation, r.Saturation)),
        },
        JsonSerializerOptions.Web);

    private static object Table(string name, SaturationTable table)
    {
        var (first, last) = (table.Temperatures.Lowest.Degrees, table.Temperatures.Highest.Degrees);
        var degrees = Enumerable.Range(0, (int)Math.Round(last - first) + 1).Select(i => new CelsiusTemperature(first + i)).ToList();
        return new
        {
            name,
            first,
            dew = degrees.Select(t => Rounded(table.DewPressure(t))),
            bubble = degrees.Select(t => Rounded(table.BubblePressure(t))),
        };
    }

    private static double Rounded(AbsolutePressure pressure) =>
        double.Parse(pressure.Pascals.ToString(SixDigits, CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
