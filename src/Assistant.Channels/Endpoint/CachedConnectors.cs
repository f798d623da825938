using System.Collections.Concurrent;
using Microsoft.Bot.Connector;
using Microsoft.Bot.Connector.Authentication;

namespace Assistant.Channels.Endpoint;

/// <summary>Keeps one connector client a service address: building one for every turn costs more than the turn.</summary>
internal sealed class CachedConnectors(ConnectorFactory inner, ConcurrentDictionary<(string ServiceUrl, string Audience), Lazy<Task<IConnectorClient>>> cache) : ConnectorFactory
{
    /// <summary>More addresses than this are not kept: a caller names its own, and must not fill the memory with them.</summary>
    public const int MostKept = 64;

    public override async Task<IConnectorClient> CreateAsync(string serviceUrl, string audience, CancellationToken cancellationToken)
    {
        var key = (serviceUrl, audience ?? "");
        if (cache.Count >= MostKept && !cache.ContainsKey(key))
        {
            return await inner.CreateAsync(serviceUrl, audience, cancellationToken);
        }

        var client = cache.GetOrAdd(key, _ => new(() => KeptAsync(serviceUrl, audience)));
        try
        {
            return await client.Value.WaitAsync(cancellationToken);
        }
        catch (Exception) when (client.Value.IsFaulted)
        {
            cache.TryRemove(KeyValuePair.Create(key, client));
            throw;
        }
    }

    private async Task<IConnectorClient> KeptAsync(string serviceUrl, string? audience) =>
        new KeptConnector(await inner.CreateAsync(serviceUrl, audience, CancellationToken.None));
}
