using Microsoft.Bot.Connector;
using Microsoft.Rest;
using Newtonsoft.Json;

namespace Assistant.Channels.Endpoint;

/// <summary>A connector client that outlives the turn it is used in: the framework disposes of the client it was given after each.</summary>
internal sealed class KeptConnector(IConnectorClient inner) : IConnectorClient
{
    public Uri BaseUri
    {
        get => inner.BaseUri;
        set => inner.BaseUri = value;
    }

    public JsonSerializerSettings SerializationSettings => inner.SerializationSettings;

    public JsonSerializerSettings DeserializationSettings => inner.DeserializationSettings;

    public ServiceClientCredentials Credentials => inner.Credentials;

    public IAttachments Attachments => inner.Attachments;

    public IConversations Conversations => inner.Conversations;

    public void Dispose()
    {
        // It is kept for the next turn.
    }
}
