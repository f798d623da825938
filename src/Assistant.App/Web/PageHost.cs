using Assistant.App.Demo;
using Assistant.App.Hosting;
using Assistant.App.Web.Voice;
using Assistant.Channels;
using Assistant.Channels.Endpoint;
using Assistant.Channels.Rooms;
using Assistant.Channels.Text;
using Assistant.Channels.Xmpp;
using Assistant.Records.People;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Assistant.App.Web;

/// <summary>
/// The page and its endpoints: on this machine alone, or for others over TLS and after a sign-in. A feature is one line where it is mapped;
/// an endpoint that brings its own key (a gateway, a signed link) is mapped with AllowAnonymous.
/// </summary>
internal static class PageHost
{
    /// <summary>Six and more for each open page, and a proxy brings those of all phones; a runaway client must still not take all memory.</summary>
    private const int MostConnections = 5000;

    /// <summary>What an endpoint takes that says no other size.</summary>
    private const int LargestBody = 64 * 1024;

    /// <summary>Slower than this, after a moment, and a request's body or an answer is given up: 240 bytes a second is less than the weakest signal that carries anything.</summary>
    private static readonly MinDataRate SlowestBody = new(240, TimeSpan.FromSeconds(10));

    public static WebApplication Build(CallRoom room, PeopleService people, DemoVisit demo, BotSettings bot, Exposure exposure, int port, TextSettings? text = null, XmppSettings? chat = null)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.Logging.ClearProviders().AddConsole(console => console.LogToStandardErrorThreshold = LogLevel.Trace).SetMinimumLevel(LogLevel.Warning)
            // A start that fails is told in one line by the command.
            .AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        builder.WebHost.UseKestrelHttpsConfiguration().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxConcurrentConnections = MostConnections;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
            kestrel.Limits.MinRequestBodyDataRate = SlowestBody;
            kestrel.Limits.MinResponseDataRate = SlowestBody;
            kestrel.Limits.MaxRequestBodySize = LargestBody;
            kestrel.Listen(exposure.Address, port, at =>
            {
                if (exposure.Certificate is { } certificate)
                {
                    at.UseHttps(certificate);
                }
            });
        });
        builder.Services.AddResponseCompression();
        builder.Services.Configure<RouteHandlerOptions>(handlers => handlers.ThrowOnBadRequest = true);
        builder.Services.AddSingleton(TimeProvider.System);
        builder.Services.AddSingleton(room);
        builder.Services.AddSingleton<IConversation>(room);
        builder.Services.AddSingleton(room.Dialogue.Phrases);
        builder.Services.AddSingleton(new VisitJoining(room.Log, room.Dialogue.Engine, room.Dialogue.Phrases, people));
        builder.Services.AddSingleton(people);
        builder.Services.AddSingleton(demo);
        builder.Services.AddSignIn();
        builder.Services.AddTelemetry();
        if (exposure.IsReachable && ProviderSignIn.Settings.Read() is { } provider)
        {
            builder.Services.AddProviderSignIn(provider, Path.Combine(room.Data.Path, "keys"));
        }

        builder.Services.AddSingleton<VisitDesk>();
        builder.Services.AddSingleton<VisitViews>();
        builder.Services.AddSingleton<VoiceDesk>();
        builder.Services.AddHostedService<AlertWatch>();
        builder.Services.AddSingleton(_ => new VisitFeed(room.Log));
        builder.Services.AddSingleton(services => new PictureUploads(room.Data.Uploads, services.GetRequiredService<TimeProvider>().GetUtcNow()));
        builder.Services.AddColdwalkBot(bot);
        builder.Services.AddRooms(room.Log, room.Conversations, room.Dialogue.Engine, room.Dialogue.Phrases, hasXmpp: chat is not null);
        if (text is not null)
        {
            builder.Services.AddTextMessages(room, people, text);
            builder.Services.AddSingleton<TextsOfANumber>();
        }

        if (chat is not null)
        {
            builder.Services.AddXmpp(chat, room.Data.Rooms, room.Log, room.Conversations, room.Dialogue.Engine, room.Dialogue.Phrases, people);
        }

        var app = builder.Build();
        app.UseHealth(room);
        app.UsePageErrors();
        if (exposure.Proxy is { } proxy)
        {
            app.UseTrustedProxy(proxy);
        }

        app.UsePageGuards(exposure);
        if (exposure.IsReachable)
        {
            app.UseSignIn();
        }

        app.UseResponseCompression();
        app.UsePageShell();
        app.MapVisits();
        app.MapVisitStream();
        app.MapPictures();
        app.MapReports();
        app.MapReportLinks();
        app.MapVoice();
        app.MapTables();
        app.MapUnits();
        app.MapSharing();
        app.MapColdwalkBot().AllowAnonymous();
        if (text is not null)
        {
            app.MapTextMessages();
        }

        return app;
    }
}
