using System.Collections.Concurrent;
using System.Security.Claims;
using Microsoft.Bot.Connector;
using Microsoft.Bot.Connector.Authentication;
using Microsoft.Bot.Schema;

namespace Assistant.Channels.Endpoint;

/// <summary>
/// The framework's own authentication with what differs: a reply goes only to an allowed address, connector clients are kept, and nobody signs in through it.
/// </summary>
internal sealed class GuardedAuthentication(BotFrameworkAuthentication inner, ServiceUrlAllowList allowed) : BotFrameworkAuthentication
{
    private readonly ConcurrentDictionary<(string ServiceUrl, string Audience), Lazy<Task<IConnectorClient>>> connectors = new();

    public override string GetOriginatingAudience() => inner.GetOriginatingAudience();

    public override Task<ClaimsIdentity> AuthenticateChannelRequestAsync(string authHeader, CancellationToken cancellationToken) =>
        inner.AuthenticateChannelRequestAsync(authHeader, cancellationToken);

    /// <exception cref="UnauthorizedAccessException">The caller is not who it says, or its service address is not allowed.</exception>
    public override async Task<AuthenticateRequestResult> AuthenticateRequestAsync(Activity activity, string authHeader, CancellationToken cancellationToken)
    {
        if (!allowed.Allows(activity.ServiceUrl))
        {
            throw new UnauthorizedAccessException("The service address is not on the list of allowed hosts.");
        }

        var result = await inner.AuthenticateRequestAsync(activity, authHeader, cancellationToken);
        result.ConnectorFactory = new CachedConnectors(result.ConnectorFactory, connectors);
        return result;
    }

    public override Task<AuthenticateRequestResult> AuthenticateStreamingRequestAsync(string authHeader, string channelIdHeader, CancellationToken cancellationToken) =>
        throw new UnauthorizedAccessException("Streaming connections are not served.");

    public override ConnectorFactory CreateConnectorFactory(ClaimsIdentity claimsIdentity) =>
        new CachedConnectors(inner.CreateConnectorFactory(claimsIdentity), connectors);

    public override Task<UserTokenClient> CreateUserTokenClientAsync(ClaimsIdentity claimsIdentity, CancellationToken cancellationToken) =>
        Task.FromResult<UserTokenClient>(NoUserTokens.Instance);
}
