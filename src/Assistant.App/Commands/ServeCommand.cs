using System.CommandLine;
using System.Net.Sockets;
using Assistant.App.Demo;
using Assistant.App.Hosting;
using Assistant.App.Web;
using Assistant.Records.People;
using Assistant.Records.Signing;

namespace Assistant.App.Commands;

/// <summary><c>serve</c>: the page and the bot endpoint on this machine.</summary>
internal static class ServeCommand
{
    /// <summary>Where it serves unless told otherwise.</summary>
    public const string UsualAddress = "http://127.0.0.1:5080";

    private const int UsualPort = 5080;

    private static readonly Option<string?> Data = Options.Data();
    private static readonly Option<int> Port = new("--port") { Description = "Port to listen on; 0 takes a free one.", DefaultValueFactory = _ => UsualPort };

    public static Command Create()
    {
        var command = new Command("serve", "Serve the page and the bot endpoint: on this machine, or for others over TLS and after a sign-in.") { Port, Data };
        ServeOptions.AddTo(command);
        command.SetWork(RunAsync);
        return command;
    }

    private static async Task RunAsync(ParseResult arguments, CancellationToken cancellation)
    {
        var port = arguments.GetValue(Port);
        if (port is < 0 or > 65535)
        {
            throw new CommandFailure($"--port {port}: a port is a number from 0 to 65535.");
        }

        var exposure = ServeOptions.Read(arguments);
        var text = TextEnvironment.Read();
        var chat = XmppEnvironment.Read();
        var data = arguments.Records(Data);
        await using var room = await CallRoom.OpenAsync(data, new(), cancellation);
        var people = new PeopleService(room.Log, await SigningKey.OpenAsync(data.Path, room.Log.Database, cancellation), TimeProvider.System);
        if (exposure.IsReachable && await people.FirmsAsync(cancellation) is not [_])
        {
            throw new CommandFailure("Where others can come, people sign in, and the page serves one firm: set it up with people add NAME --firm FIRM, then people code NAME.");
        }

        await using var app = PageHost.Build(room, people, DemoVisit.Load(), BotEnvironment.Read(), exposure, port, text, chat);
        try
        {
            await app.StartAsync(cancellation);
        }
        catch (Exception failure) when (failure is IOException { InnerException: Microsoft.AspNetCore.Connections.AddressInUseException } or SocketException)
        {
            throw new CommandFailure(failure is SocketException
                ? $"Port {port} can not be listened on ({failure.Message.TrimEnd('.')}). Choose another with --port."
                : $"Port {port} is in use by another program. Choose another with --port.");
        }

        var who = exposure.IsReachable ? $"{exposure.HostName ?? "the certificate's name"} over TLS; people sign in with a code" : "on this machine only";
        Console.WriteLine($"Coldwalk is at {app.Urls.First()}/ - {who}. Ctrl+C stops it.");
        await app.WaitForShutdownAsync(cancellation);
    }
}
