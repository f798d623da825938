using Microsoft.Bot.Connector.Authentication;
using Microsoft.Bot.Schema;

namespace Assistant.Channels.Endpoint;

/// <summary>
/// The framework makes a client for signing users in before every turn, which costs more than the turn, and nobody signs in through it:
/// who speaks is known by the channel's account. It holds nothing, so that the framework may dispose of it after each turn. Whatever asks for a token is told so.
/// </summary>
internal sealed class NoUserTokens : UserTokenClient
{
    public static NoUserTokens Instance { get; } = new();

    public override Task<TokenResponse> GetUserTokenAsync(string userId, string connectionName, string channelId, string magicCode, CancellationToken cancellationToken) => throw Refusal();

    public override Task<SignInResource> GetSignInResourceAsync(string connectionName, Activity activity, string finalRedirect, CancellationToken cancellationToken) => throw Refusal();

    public override Task SignOutUserAsync(string userId, string connectionName, string channelId, CancellationToken cancellationToken) => throw Refusal();

    public override Task<TokenStatus[]> GetTokenStatusAsync(string userId, string channelId, string includeFilter, CancellationToken cancellationToken) => throw Refusal();

    public override Task<Dictionary<string, TokenResponse>> GetAadTokensAsync(string userId, string connectionName, string[] resourceUrls, string channelId, CancellationToken cancellationToken) => throw Refusal();

    public override Task<TokenResponse> ExchangeTokenAsync(string userId, string connectionName, string channelId, TokenExchangeRequest exchangeRequest, CancellationToken cancellationToken) => throw Refusal();

    private static NotSupportedException Refusal() => new("Nobody signs in through the channel's service.");
}
