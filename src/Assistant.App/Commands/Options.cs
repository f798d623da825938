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

    /// <summary>Where the records are: an option of the program itself, so that every command that uses records takes it.</summary>
    public static Option<string?> Store { get; } = new("--store")
    {
        Description = "Where the records are: sqlite, a file in the data folder; or a PostgreSQL connection string (Host=...;Database=...;Username=...). Without it: COLDWALK_STORE, or the file COLDWALK_STORE_FILE names.",
        HelpName = "STORE",
        Recursive = true,
    };

    /// <summary>The records that a command is to use.</summary>
    public static DataFolder Records(this ParseResult arguments, Option<string?> data) =>
        DataFolder.Open(arguments.GetValue(data), RecordsStore.Read(arguments.GetValue(Store)));

    /// <summary>The same, which must be there already.</summary>
    public static DataFolder ExistingRecords(this ParseResult arguments, Option<string?> data) =>
        DataFolder.Existing(arguments.GetValue(data), RecordsStore.Read(arguments.GetValue(Store)));

    public static Option<string> Units()
    {
        var units = new Option<string>("--units") { Description = "What a bare number means.", DefaultValueFactory = _ => "us" };
        units.AcceptOnlyFromAmong("us", "metric");
        return units;
    }

    public static UnitSystem Read(this ParseResult arguments, Option<string> units) =>
        arguments.GetValue(units) == "metric" ? UnitSystem.Metric : UnitSystem.Us;
}
