using System.Net;
using Assistant.Channels.Bots;
using Assistant.Channels.Rooms;
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
            new ConfigurationBotFrameworkAuthentication(Registration(settings)), provider.GetRequiredService<ServiceUrlAllowList>(), provider.GetRequiredService<ILogger<GuardedAuthentication>>()));
        services.AddSingleton<SpeakerDoor>();
        services.AddSingleton<RoomDoor>();
        services.AddSingleton<BotPosts>();
        services.AddSingleton<IRoomPoster>(provider => provider.GetRequiredService<BotPosts>());
        services.AddHostedService<BotDelivery>();
        services.AddSingleton(provider =>
        {
            var adapter = new CloudAdapter(provider.GetRequiredService<BotFrameworkAuthentication>(), provider.GetRequiredService<ILogger<CloudAdapter>>());
            adapter.Use(provider.GetRequiredService<SpeakerDoor>()).Use(provider.GetRequiredService<RoomDoor>());
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
    }).AddInMemoryCollection(settings.Cloud is { } cloud ? OfCloud(cloud) : []).Build();

    // The framework takes all of them or none.
    private static Dictionary<string, string?> OfCloud(BotCloud cloud) => new()
    {
        ["ValidateAuthority"] = "true",
        ["ToBotFromChannelOpenIdMetadataUrl"] = cloud.Metadata,
        ["ToBotFromChannelTokenIssuer"] = cloud.Issuer,
        ["ToBotFromEmulatorOpenIdMetadataUrl"] = AuthenticationConstants.ToBotFromEmulatorOpenIdMetadataUrl,
        ["OAuthUrl"] = AuthenticationConstants.OAuthUrl,
        ["ToChannelFromBotLoginUrl"] = cloud.Login.Length > 0 ? cloud.Login : AuthenticationConstants.ToChannelFromBotLoginUrl,
        ["ToChannelFromBotOAuthScope"] = cloud.Scope.Length > 0 ? cloud.Scope : AuthenticationConstants.ToChannelFromBotOAuthScope,
    };

    private sealed record BodyLimit(long? MaxRequestBodySize) : IRequestSizeLimitMetadata;
}
