namespace Assistant.Channels.Endpoint;

/// <summary>Who may talk to the bot endpoint and where its replies may go.</summary>
/// <param name="AppId">The bot's registration, or empty: then callers are not authenticated and only this machine is answered.</param>
/// <param name="Password">The registration's secret; empty with an empty <paramref name="AppId"/>.</param>
/// <param name="TenantId">The registration's tenant, or empty for a registration of many tenants.</param>
/// <param name="ServiceHosts">
/// Hosts a reply may be sent to besides this machine's loopback addresses, over https only; a leading dot takes in every subdomain.
/// </param>
public sealed record BotSettings(string AppId, string Password, string TenantId, IReadOnlyList<string> ServiceHosts)
{
    public static BotSettings LoopbackOnly { get; } = new("", "", "", []);

    /// <summary>The cloud the registration is in, where it is not the public one; null for that.</summary>
    public BotCloud? Cloud { get; init; }

    public bool IsAuthenticated => AppId.Length > 0;
}

/// <summary>Where a cloud of its own publishes its keys and gives tokens.</summary>
/// <param name="Metadata">The address of its OpenID metadata, by which a caller's token is checked; https.</param>
/// <param name="Issuer">Whose tokens callers bring.</param>
/// <param name="Login">Where the bot gets its own tokens, or empty for the public cloud's.</param>
/// <param name="Scope">What it asks them for, or empty for the public cloud's.</param>
public sealed record BotCloud(string Metadata, string Issuer, string Login = "", string Scope = "");
