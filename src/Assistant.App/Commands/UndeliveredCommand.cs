using System.CommandLine;
using System.Globalization;
using Assistant.Channels.Text;
using Assistant.Records.Outbox;

namespace Assistant.App.Commands;

/// <summary><c>undelivered</c>: the text messages that were given up.</summary>
internal static class UndeliveredCommand
{
    private static readonly Option<string?> Data = Options.Data();

    public static Command Create()
    {
        var command = new Command("undelivered", "List the replies that could not be delivered by text message and were given up.") { Data };
        command.SetWork(RunAsync);
        return command;
    }

    private static async Task RunAsync(ParseResult arguments, CancellationToken cancellation)
    {
        var database = arguments.ExistingRecords(Data).Database;
        await database.OpenAsync(cancellation);
        var lost = await new ReplyOutbox(database).LostAsync(TextSettings.Channel, cancellation);
        if (lost.IsEmpty)
        {
            Console.WriteLine("Nothing was given up.");
        }

        foreach (var reply in lost)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{reply.GaveUpAt.UtcDateTime:yyyy-MM-dd HH:mm} UTC  {reply.Conversation}  {reply.Trouble}"));
        }
    }
}
