using System.CommandLine;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Assistant.App.Hosting;

namespace Assistant.App.Commands;

/// <summary>How <c>serve</c> is told who can reach the page; whatever would open it without TLS is refused.</summary>
internal static class ServeOptions
{
    private static readonly Option<string> Listen = new("--listen") { Description = "Address to listen on; beyond this machine with TLS only.", DefaultValueFactory = _ => "127.0.0.1", HelpName = "ADDRESS" };
    private static readonly Option<string?> Certificate = new("--certificate") { Description = "The page's own certificate: PEM with --certificate-key, or PFX (password in COLDWALK_CERTIFICATE_PASSWORD).", HelpName = "FILE" };
    private static readonly Option<string?> Key = new("--certificate-key") { Description = "The key of a PEM certificate.", HelpName = "FILE" };
    private static readonly Option<string?> Proxy = new("--proxy") { Description = "Address of the one proxy that does TLS and may hand requests over.", HelpName = "ADDRESS" };
    private static readonly Option<string?> HostName = new("--host-name") { Description = "The name people reach the page by, such as coldwalk.example.", HelpName = "NAME" };

    public static void AddTo(Command command)
    {
        foreach (var option in new Option[] { Listen, Certificate, Key, Proxy, HostName })
        {
            command.Add(option);
        }
    }

    /// <exception cref="CommandFailure">It would open the page without TLS, or a value can not be used.</exception>
    public static Exposure Read(ParseResult arguments)
    {
        var exposure = new Exposure(
            Parsed("--listen", arguments.GetRequiredValue(Listen)),
            arguments.GetValue(Certificate) is { } file ? Load(file, arguments.GetValue(Key)) : null,
            arguments.GetValue(Proxy) is { } proxy ? Parsed("--proxy", proxy) : null,
            arguments.GetValue(HostName));
        if (!IPAddress.IsLoopback(exposure.Address) && !exposure.IsReachable)
        {
            throw new CommandFailure($"--listen {exposure.Address}: beyond this machine the page is served with TLS only. Give --certificate FILE, or --proxy ADDRESS of a proxy that does it.");
        }

        return exposure is { Proxy: not null, HostName: null }
            ? throw new CommandFailure("--proxy: say with --host-name under which name people reach the page.")
            : exposure;
    }

    private static IPAddress Parsed(string option, string text) =>
        IPAddress.TryParse(text, out var address) ? address : throw new CommandFailure($"{option} {text}: a numeric address is wanted, such as 0.0.0.0 or 192.0.2.7.");

    private static X509Certificate2 Load(string file, string? key)
    {
        try
        {
            return key is not null
                ? X509Certificate2.CreateFromPemFile(file, key)
                : X509CertificateLoader.LoadPkcs12FromFile(file, Secrets.Read("COLDWALK_CERTIFICATE_PASSWORD"));
        }
        catch (Exception failure) when (failure is CryptographicException or IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new CommandFailure($"--certificate {file} can not be used ({failure.Message.TrimEnd('.')}). PEM goes with --certificate-key, PFX with its password.");
        }
    }
}
