using System.Collections.Immutable;
using System.CommandLine;
using Assistant.Records.Conversations;
using Assistant.Records.Signing;

namespace Assistant.App.Commands;

/// <summary><c>verify</c>: recomputes the chain of the log and holds it against the heads signed earlier; exit 1 where an event does not fit.</summary>
internal static class VerifyCommand
{
    private static readonly Option<string?> Data = Options.Data();
    private static readonly Option<string?> Heads = new("--heads") { Description = "A copy of signed-heads.jsonl kept elsewhere, to hold the log against as well.", HelpName = "FILE" };
    private static readonly Argument<string?> Visit = new("VISIT") { Description = "One visit, \"last\" for the one opened last; without it, all.", Arity = ArgumentArity.ZeroOrOne };

    public static Command Create()
    {
        var command = new Command("verify", "Check that no stored event was changed, added, moved, removed or cut off.") { Visit, Heads, Data };
        command.SetWork(RunAsync);
        return command;
    }

    private static async Task RunAsync(ParseResult arguments, CancellationToken cancellation)
    {
        var data = arguments.ExistingRecords(Data);
        var database = data.Database;
        await database.OpenAsync(cancellation);
        var key = await SigningKey.OpenAsync(data.Path, database, cancellation);
        var book = new HeadBook(new HeadWitness(database, key), data.Path);
        var asked = arguments.GetValue(Visit);
        var visit = asked == "last" ? await new OpenVisits(database).LastAsync(cancellation) ?? asked : asked;
        var heads = HeadBook.Read(book.Path).AddRange(Copy(arguments.GetValue(Heads)));
        var verdict = await new RecordsVerifier(database, key).VerifyAsync(visit, heads, cancellation);
        if (verdict.Broken is { } broken)
        {
            throw new CommandFailure($"Visit {broken.VisitId}, event {broken.Number}: {broken.Why}");
        }

        if (visit is not null && verdict.Visits == 0)
        {
            throw new CommandFailure($"There is no visit {visit} in these records.");
        }

        await book.NoteAsync(visit, cancellation);
        Console.WriteLine($"{verdict.Events} events of {Counted(verdict.Visits, "visit")}: every one fits, and {Signed(heads.Length)} the log.");
        Console.WriteLine($"The heads as they are now are signed in {book.Path}: keep a copy elsewhere.");
    }

    private static ImmutableArray<SignedHead> Copy(string? file) => file switch
    {
        null => [],
        _ when File.Exists(file) => HeadBook.Read(file),
        _ => throw new CommandFailure($"There is no file {file}.", CommandFailure.BadInput),
    };

    private static string Signed(int count) => $"{Counted(count, "head")} signed earlier {(count == 1 ? "fits" : "fit")}";

    private static string Counted(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";
}
