namespace Assistant.Channels.Xmpp.Wire;

/// <summary>The stream to the server can not go on.</summary>
/// <param name="condition">What the server is told (RFC 6120, section 4.9.3), or null where it said so itself or is gone.</param>
internal sealed class StreamBrokenException(string? condition, string message, Exception? cause = null) : Exception(message, cause)
{
    public string? Condition => condition;
}
