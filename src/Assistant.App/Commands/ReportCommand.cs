using System.CommandLine;
using Assistant.App.Hosting;
using Assistant.Dialogue.Replies;
using Assistant.Records.Log;
using Assistant.Records.Pictures;
using Assistant.Records.Signing;

namespace Assistant.App.Commands;

/// <summary><c>report</c>: a visit's report as HTML, PDF or JSON, or a signed address that shows it for some days.</summary>
internal static class ReportCommand
{
    private static readonly Argument<string> Visit = new("VISIT") { Description = "The visit's id; \"last\" is the one opened last." };
    private static readonly Option<string?> Data = Options.Data();
    private static readonly Option<string> Format = new("--format") { Description = "html, pdf or json.", DefaultValueFactory = _ => "html" };
    private static readonly Option<string?> Out = new("--out") { Description = "File to write; without it, standard output.", HelpName = "FILE" };

    private static readonly Option<bool> Link = new("--link") { Description = "Write no report, but a signed address under which \"serve\" shows it until it expires." };
    private static readonly Option<int> Days = new("--days") { Description = "With --link: how many days it holds, 90 at most.", DefaultValueFactory = _ => ReportLinks.UsualDays };
    private static readonly Option<string> Address = new("--address") { Description = "With --link: where \"serve\" is reached.", DefaultValueFactory = _ => ServeCommand.UsualAddress, HelpName = "URL" };

    public static Command Create()
    {
        Format.AcceptOnlyFromAmong([.. VisitReports.Formats]);
        var command = new Command("report", "Write the report of a visit.") { Visit, Format, Out, Link, Days, Address, Data };
        command.SetWork(RunAsync);
        return command;
    }

    private static async Task RunAsync(ParseResult arguments, CancellationToken cancellation)
    {
        var data = arguments.ExistingRecords(Data);
        await using var log = await EventLog.OpenAsync(data.Database, cancellation);
        using var pictures = new PictureStore(log.Database);
        var asked = arguments.GetRequiredValue(Visit);
        var visit = asked == "last" ? await new Records.Conversations.OpenVisits(log.Database).LastAsync(cancellation) : asked;
        var reports = new VisitReports(log, pictures, PhraseBook.Load(DialogFiles.Read("phrases")));
        var report = (visit is null ? null : await reports.PrintAsync(visit, arguments.GetRequiredValue(Format), cancellation))
            ?? throw new CommandFailure($"There is no visit {asked} in the records of {data.Path}.");
        await SigningKey.OpenAsync(data.Path, log.Database, cancellation);
        var links = new ReportLinks(log.Database, data, TimeProvider.System);
        await links.Heads.NoteAsync(visit, cancellation);
        if (arguments.GetValue(Link))
        {
            var address = arguments.GetRequiredValue(Address);
            if (!Uri.TryCreate(address, UriKind.Absolute, out var uri) || uri.Scheme is not ("http" or "https"))
            {
                throw new CommandFailure($"--address {address}: where \"serve\" is reached is wanted, such as https://coldwalk.example.", CommandFailure.BadInput);
            }

            var link = links.Mint(visit!, arguments.GetValue(Days));
            Console.WriteLine(address.TrimEnd('/') + link.Path);
            await Console.Error.WriteLineAsync($"Whoever has this address reads the report until {link.Until:yyyy-MM-dd HH:mm} UTC.");
            return;
        }

        await WriteAsync(report.Content, arguments.GetValue(Out), cancellation);
    }

    private static async Task WriteAsync(byte[] content, string? file, CancellationToken cancellation)
    {
        if (file is null)
        {
            await using var output = Console.OpenStandardOutput();
            await output.WriteAsync(content, cancellation);
            return;
        }

        try
        {
            await File.WriteAllBytesAsync(file, content, cancellation);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new CommandFailure($"{file} can not be written ({failure.Message.TrimEnd('.')}).");
        }
    }
}
