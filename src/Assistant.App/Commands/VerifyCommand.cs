using System.CommandLine;
using Assistant.App.Hosting;
using Assistant.Records.Chain;
using Assistant.Records.Storage.Sqlite;

namespace Assistant.App.Commands;

/// <summary><c>verify</c>: recomputes the chain of the log; exit 1 where an event does not fit.</summary>
internal static class VerifyCommand
{
    private static readonly Option<string?> Data = Options.Data();
    private static readonly Argument<string?> Visit = new("VISIT") { Description = "One visit; without it, all.", Arity = ArgumentArity.ZeroOrOne };

    public static Command Create()
    {
        var command = new Command("verify", "Check that no stored event was changed, added, moved or removed.") { Visit, Data };
        command.SetWork(RunAsync);
        return command;
    }

    private static async Task RunAsync(ParseResult arguments, CancellationToken cancellation)
    {
        var database = new SqliteRecords(DataFolder.Existing(arguments.GetValue(Data)).Database);
        await database.OpenAsync(cancellation);
        var visit = arguments.GetValue(Visit);
        var verdict = await new ChainVerifier(database).VerifyAsync(visit, cancellation);
        if (verdict.Broken is { } broken)
        {
            throw new CommandFailure($"Visit {broken.VisitId}, event {broken.Number}: {broken.Why}");
        }

        if (visit is not null && verdict.Visits == 0)
        {
            throw new CommandFailure($"There is no visit {visit} in these records.");
        }

        Console.WriteLine($"{verdict.Events} events of {verdict.Visits} visits: every one fits.");
    }
}
