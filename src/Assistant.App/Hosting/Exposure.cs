using System.Net;
using System.Security.Cryptography.X509Certificates;

namespace Assistant.App.Hosting;

/// <summary>Who can reach the page: this machine alone, or others over TLS, by a certificate of the program's own or by a trusted proxy that does it.</summary>
/// <param name="Address">The address listened on.</param>
/// <param name="Certificate">The program's own certificate, or null.</param>
/// <param name="Proxy">The one proxy that may hand requests over, or null.</param>
/// <param name="HostName">The name people reach it by; null leaves it to the certificate's names.</param>
internal sealed record Exposure(IPAddress Address, X509Certificate2? Certificate, IPAddress? Proxy, string? HostName)
{
    public static Exposure ThisMachine { get; } = new(IPAddress.Loopback, null, null, null);

    /// <summary>True where others than this machine can come: then everyone signs in.</summary>
    public bool IsReachable => Certificate is not null || Proxy is not null;

    /// <summary>True for a name this program goes by: another site's page can point a name of its own at any address.</summary>
    public bool Accepts(string host) => IsReachable && HostName is not null
        ? host.Equals(HostName, StringComparison.OrdinalIgnoreCase)
        : IsLoopback(host) || Certificate?.MatchesHostname(host.Trim('[', ']')) == true;

    private static bool IsLoopback(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address));
}
