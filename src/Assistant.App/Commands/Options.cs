using System.CommandLine;
using Assistant.App.Hosting;
using Assistant.Trade.Quantities;

namespace Assistant.App.Commands;

/// <summary>The options that several commands share.</summary>
internal static class Options
{
    public static Option<string?> Data() => new("--data")
    {
        Description = $"Folder that holds the records. Without it: COLDWALK_DATA, otherwise {DataFolder.Default}.",
        HelpName = "DIR",
    };

    public static Option<string> Units()
    {
        var units = new Option<string>("--units") { Description = "What a bare number means.", DefaultValueFactory = _ => "us" };
        units.AcceptOnlyFromAmong("us", "metric");
        return units;
    }

    public static UnitSystem Read(this ParseResult arguments, Option<string> units) =>
        arguments.GetValue(units) == "metric" ? UnitSystem.Metric : UnitSystem.Us;
}
