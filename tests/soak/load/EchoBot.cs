using System.Net;
using Microsoft.Bot.Builder;
using Microsoft.Bot.Builder.Integration.AspNet.Core;
using Microsoft.Bot.Schema;

namespace Assistant.Load;

/// <summary>The least a bot on the same framework can be: it says back what it was told and keeps nothing. What it manages is what the framework costs.</summary>
internal sealed class EchoBot : ActivityHandler
{
    public static async Task<int> RunAsync(int port)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.SetMinimumLevel(LogLevel.Error);
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, port));
        builder.Services.AddSingleton(services => new CloudAdapter(new ConfigurationBotFrameworkAuthentication(builder.Configuration), services.GetRequiredService<ILogger<CloudAdapter>>()));
        builder.Services.AddTransient<IBot, EchoBot>();
        await using var app = builder.Build();
        app.MapPost("/api/messages", (HttpContext context, CloudAdapter adapter, IBot bot) => adapter.ProcessAsync(context.Request, context.Response, bot, context.RequestAborted));
        await app.StartAsync();
        Console.WriteLine($"echo at {app.Urls.First()}");
        await app.WaitForShutdownAsync();
        return 0;
    }

    protected override Task OnMessageActivityAsync(ITurnContext<IMessageActivity> turnContext, CancellationToken cancellationToken) =>
        turnContext.SendActivityAsync(MessageFactory.Text(turnContext.Activity.Text), cancellationToken);
}
