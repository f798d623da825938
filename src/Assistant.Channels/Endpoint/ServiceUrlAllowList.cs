using System.Net;

namespace Assistant.Channels.Endpoint;

/// <summary>Where replies may be sent. The caller names the address, so it is checked before anything is sent or stored.</summary>
public sealed class ServiceUrlAllowList(IReadOnlyList<string> hosts)
{
    /// <summary>True for a loopback address over http or https, and for a listed host over https.</summary>
    public bool Allows(string? serviceUrl)
    {
        if (!Uri.TryCreate(serviceUrl, UriKind.Absolute, out var uri) || uri.UserInfo.Length > 0)
        {
            return false;
        }

        if (uri.Scheme != Uri.UriSchemeHttps && uri.Scheme != Uri.UriSchemeHttp)
        {
            return false;
        }

        return IsLoopback(uri) || (uri.Scheme == Uri.UriSchemeHttps && hosts.Any(host => Matches(uri.IdnHost, host)));
    }

    // By literal address or the one reserved name: another name that resolves to loopback today may resolve elsewhere tomorrow.
    private static bool IsLoopback(Uri uri) =>
        uri.IdnHost.Equals("localhost", StringComparison.OrdinalIgnoreCase)
        || (IPAddress.TryParse(uri.IdnHost.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address));

    private static bool Matches(string host, string listed) => listed.StartsWith('.')
        ? host.EndsWith(listed, StringComparison.OrdinalIgnoreCase)
        : host.Equals(listed, StringComparison.OrdinalIgnoreCase);
}
