using System.CommandLine;
using Assistant.Records.Conversations;
using Assistant.Records.Exchange;
using Assistant.Records.Signing;

namespace Assistant.App.Commands;

/// <summary><c>export</c>: a visit as one file that another installation verifies.</summary>
internal static class ExportCommand
{
    private static readonly Argument<string> Visit = new("VISIT") { Description = "The visit's id; \"last\" is the one opened last." };
    private static readonly Option<string> Out = new("--out") { Description = "File to write.", HelpName = "FILE", Required = true };
    private static readonly Option<string?> Data = Options.Data();

    public static Command Create()
    {
        var command = new Command("export", "Write a visit as one file: its log, its pictures, its equipment.") { Visit, Out, Data };
        command.SetWork(RunAsync);
        return command;
    }

    private static async Task RunAsync(ParseResult arguments, CancellationToken cancellation)
    {
        var data = arguments.ExistingRecords(Data);
        var database = data.Database;
        await database.OpenAsync(cancellation);
        var asked = arguments.GetRequiredValue(Visit);
        var visit = asked == "last" ? await new OpenVisits(database).LastAsync(cancellation) : asked;
        var key = await SigningKey.OpenAsync(data.Path, database, cancellation);
        var content = (visit is null ? null : await new VisitExporter(database, key).ExportAsync(visit, cancellation))
            ?? throw new CommandFailure($"There is no visit {asked} in the records of {data.Path}.");
        var file = arguments.GetRequiredValue(Out);
        try
        {
            await File.WriteAllBytesAsync(file, content, cancellation);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new CommandFailure($"{file} can not be written ({failure.Message.TrimEnd('.')}).");
        }

        await new HeadBook(new HeadWitness(database, key), data.Path).NoteAsync(visit, cancellation);
        Console.WriteLine($"Visit {visit}: written to {file}. It holds people's names and words; give it only to whom they concern.");
    }
}
