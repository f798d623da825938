using System.Collections.Concurrent;
using System.Security.Claims;
using Microsoft.Bot.Connector;
using Microsoft.Bot.Connector.Authentication;
using Microsoft.Bot.Schema;
using Microsoft.Extensions.Logging;
using Microsoft.IdentityModel.Tokens;

namespace Assistant.Channels.Endpoint;

/// <summary>
/// The framework's own authentication with what differs: a reply goes only to an allowed address, connector clients are kept, and nobody signs in through it.
/// </summary>
internal sealed partial class GuardedAuthentication(BotFrameworkAuthentication inner, ServiceUrlAllowList allowed, ILogger<GuardedAuthentication> logger) : BotFrameworkAuthentication
{
    private readonly ConcurrentDictionary<(string ServiceUrl, string Audience), Lazy<Task<IConnectorClient>>> connectors = new();

    public override string GetOriginatingAudience() => inner.GetOriginatingAudience();

    public override Task<ClaimsIdentity> AuthenticateChannelRequestAsync(string authHeader, CancellationToken cancellationToken) =>
        inner.AuthenticateChannelRequestAsync(authHeader, cancellationToken);

    /// <exception cref="UnauthorizedAccessException">The caller is not who it says, or its service address is not allowed.</exception>
    public override async Task<AuthenticateRequestResult> AuthenticateRequestAsync(Activity activity, string authHeader, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(activity);
        if (!allowed.Allows(activity.ServiceUrl))
        {
            Refused(logger, "its service address is not on the list of allowed hosts");
            throw new UnauthorizedAccessException("The service address is not on the list of allowed hosts.");
        }

        var result = await AuthenticateAsync(activity, authHeader, cancellationToken);
        result.ConnectorFactory = new CachedConnectors(result.ConnectorFactory, connectors);
        return result;
    }

    // Whatever is wrong with a token, the caller hears only that it is refused.
    private async Task<AuthenticateRequestResult> AuthenticateAsync(Activity activity, string authHeader, CancellationToken cancellation)
    {
        try
        {
            return await inner.AuthenticateRequestAsync(activity, authHeader, cancellation);
        }
        catch (Exception refused) when (refused is UnauthorizedAccessException or SecurityTokenException or ArgumentException)
        {
            Refused(logger, refused.GetType().Name);
            throw new UnauthorizedAccessException("The caller is not who it says.", refused);
        }
    }

    [LoggerMessage(LogLevel.Warning, "Bot: a caller is refused: {Reason}")]
    private static partial void Refused(ILogger logger, string reason);

    public override Task<AuthenticateRequestResult> AuthenticateStreamingRequestAsync(string authHeader, string channelIdHeader, CancellationToken cancellationToken) =>
        throw new UnauthorizedAccessException("Streaming connections are not served.");

    public override ConnectorFactory CreateConnectorFactory(ClaimsIdentity claimsIdentity) =>
        new CachedConnectors(inner.CreateConnectorFactory(claimsIdentity), connectors);

    public override Task<UserTokenClient> CreateUserTokenClientAsync(ClaimsIdentity claimsIdentity, CancellationToken cancellationToken) =>
        Task.FromResult<UserTokenClient>(NoUserTokens.Instance);
}
