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
        var command = new Command("serve", "Serve the page and the bot endpoint, on this machine only.") { Port, Data };
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

        var text = TextEnvironment.Read();
        var data = DataFolder.Open(arguments.GetValue(Data));
        await using var room = await CallRoom.OpenAsync(data, new(), cancellation);
        var people = text is null ? null : new PeopleService(room.Log, SigningKey.Open(data.Path), TimeProvider.System);
        await using var app = PageHost.Build(room, DemoVisit.Load(), BotEnvironment.Read(), port, text, people);
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

        Console.WriteLine($"Coldwalk is at {app.Urls.First()}/ - on this machine only, until people can sign in. Ctrl+C stops it.");
        await app.WaitForShutdownAsync(cancellation);
    }
}
