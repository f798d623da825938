using System.Net;
using Assistant.Channels.Bots;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;
using Microsoft.Bot.Builder;
using Microsoft.Bot.Builder.Integration.AspNet.Core;
using Microsoft.Bot.Connector.Authentication;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Endpoint;

/// <summary><c>POST /api/messages</c>: the endpoint that Teams and other Bot Framework channels call.</summary>
public static class BotEndpoint
{
    /// <summary>An activity with its card and mentions is a few kilobytes.</summary>
    public const long LargestActivityBytes = 256 * 1024;

    public static IServiceCollection AddColdwalkBot(this IServiceCollection services, BotSettings settings)
    {
        services.AddSingleton(settings);
        services.AddSingleton(new ServiceUrlAllowList(settings.ServiceHosts));
        services.AddTransient<IBot, ColdwalkBot>();
        services.AddSingleton<BotFrameworkAuthentication>(provider => new GuardedAuthentication(
            new ConfigurationBotFrameworkAuthentication(Registration(settings)), provider.GetRequiredService<ServiceUrlAllowList>()));
        services.AddSingleton<SpeakerDoor>();
        services.AddSingleton(provider =>
        {
            var adapter = new CloudAdapter(provider.GetRequiredService<BotFrameworkAuthentication>(), provider.GetRequiredService<ILogger<CloudAdapter>>());
            adapter.Use(provider.GetRequiredService<SpeakerDoor>());
            return adapter;
        });
        return services;
    }

    public static IEndpointConventionBuilder MapColdwalkBot(this IEndpointRouteBuilder routes) =>
        routes.MapPost("/api/messages", AnswerAsync).WithMetadata(new BodyLimit(LargestActivityBytes));

    private static async Task AnswerAsync(HttpContext context, CloudAdapter adapter, IBot bot, BotSettings settings)
    {
        // Without a registration nobody can prove who they are: then only this machine is answered.
        if (!settings.IsAuthenticated && !IsThisMachine(context.Connection.RemoteIpAddress))
        {
            context.Response.StatusCode = StatusCodes.Status401Unauthorized;
            return;
        }

        await adapter.ProcessAsync(context.Request, context.Response, bot, context.RequestAborted);
    }

    private static bool IsThisMachine(IPAddress? address) => address is not null && IPAddress.IsLoopback(address);

    private static IConfiguration Registration(BotSettings settings) => new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
    {
        ["MicrosoftAppId"] = settings.AppId,
        ["MicrosoftAppPassword"] = settings.Password,
        ["MicrosoftAppTenantId"] = settings.TenantId,
        ["MicrosoftAppType"] = settings.TenantId.Length > 0 ? "SingleTenant" : "MultiTenant",
    }).Build();

    private sealed record BodyLimit(long? MaxRequestBodySize) : IRequestSizeLimitMetadata;
}
