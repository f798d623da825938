using System.CommandLine;
using Assistant.Records.Exchange;

namespace Assistant.App.Commands;

/// <summary><c>import</c>: verifies a visit's file and takes it in; exit 1 where anything in it does not fit.</summary>
internal static class ImportCommand
{
    // More than any visit's file, and little enough to read whole.
    private const long Largest = 512_000_000;

    private static readonly Argument<string> Source = new("FILE") { Description = "A file that export wrote." };
    private static readonly Option<string?> Data = Options.Data();

    public static Command Create()
    {
        var command = new Command("import", "Verify a visit's file and put the visit on record here.") { Source, Data };
        command.SetWork(RunAsync);
        return command;
    }

    private static async Task RunAsync(ParseResult arguments, CancellationToken cancellation)
    {
        var file = arguments.GetRequiredValue(Source);
        var content = await ReadAsync(file, cancellation);
        var database = arguments.Records(Data).Database;
        await database.OpenAsync(cancellation);
        var imported = await new VisitImporter(database).ImportAsync(content, TimeProvider.System.GetUtcNow(), cancellation);
        Console.WriteLine(imported.WasThere
            ? $"Visit {imported.VisitId} is on record already, the same in all {imported.Events} events: nothing was added."
            : $"Visit {imported.VisitId}: all {imported.Events} events fit, it is on record now.");
    }

    private static async Task<byte[]> ReadAsync(string file, CancellationToken cancellation)
    {
        if (Directory.Exists(file))
        {
            throw new CommandFailure($"{file} is a folder. Name the one file that export wrote.", CommandFailure.BadInput);
        }

        try
        {
            return new FileInfo(file).Length <= Largest
                ? await File.ReadAllBytesAsync(file, cancellation)
                : throw new CommandFailure($"{file} is larger than any visit's file.", CommandFailure.BadInput);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new CommandFailure($"{file} can not be read ({failure.Message.TrimEnd('.')}).", CommandFailure.BadInput);
        }
    }
}
