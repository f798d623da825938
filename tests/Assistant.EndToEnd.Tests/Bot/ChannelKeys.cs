using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace Assistant.EndToEnd.Tests.Bot;

/// <summary>
/// Stands for the cloud a bot's registration is in: OpenID metadata and keys over TLS on loopback, under a certificate of its own, and tokens
/// signed with them or with others.
/// </summary>
internal sealed class ChannelKeys : IAsyncDisposable
{
    public const string AppId = "11111111-2222-3333-4444-555555555555";
    public const string Issuer = "https://issuer.invented.example";

    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-keys-").FullName;
    private readonly RSA known = RSA.Create(2048);
    private readonly RSA other = RSA.Create(2048);
    private readonly WebApplication app;

    private ChannelKeys()
    {
        using var key = RSA.Create(2048);
        var request = new CertificateRequest("CN=localhost", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName("localhost");
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: true, hasPathLengthConstraint: false, 0, critical: true));
        var certificate = request.CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(1));
        File.WriteAllText(Trusted, certificate.ExportCertificatePem());
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseKestrelHttpsConfiguration().ConfigureKestrel(k => k.Listen(IPAddress.Loopback, 0, at => at.UseHttps(certificate)));
        app = builder.Build();
        app.Run(context => context.Response.WriteAsJsonAsync(context.Request.Path == "/keys" ? Keys() : Metadata()));
    }

    /// <summary>What the program is told of this cloud.</summary>
    public Dictionary<string, string> Environment => new()
    {
        ["COLDWALK_BOT_APP_ID"] = AppId,
        ["COLDWALK_BOT_PASSWORD"] = "an-invented-secret",
        ["COLDWALK_BOT_METADATA"] = Address + "/metadata",
        ["COLDWALK_BOT_ISSUER"] = Issuer,
        ["SSL_CERT_FILE"] = Trusted,
    };

    private string Trusted => Path.Combine(folder, "cloud.pem");

    private string Address => $"https://localhost:{new Uri(app.Urls.First()).Port}";

    public static async Task<ChannelKeys> StartAsync()
    {
        var keys = new ChannelKeys();
        await keys.app.StartAsync();
        return keys;
    }

    /// <summary>A token as the channel's service brings it, or with one thing wrong.</summary>
    public string Token(string wrong, string serviceUrl)
    {
        var now = DateTimeOffset.UtcNow.ToUnixTimeSeconds();
        var from = wrong == "expired" ? now - 7200 : now - 60;
        var head = new { alg = wrong == "unsigned" ? "none" : "RS256", typ = "JWT", kid = "k1" };
        var claims = new
        {
            iss = wrong == "issuer" ? "https://elsewhere.example" : Issuer,
            aud = wrong == "audience" ? "99999999-2222-3333-4444-555555555555" : AppId,
            serviceurl = wrong == "service" ? "http://127.0.0.1:9/" : serviceUrl,
            nbf = from,
            exp = from + 3600,
        };
        var signed = $"{Url(JsonSerializer.SerializeToUtf8Bytes(head))}.{Url(JsonSerializer.SerializeToUtf8Bytes(claims))}";
        var key = wrong == "key" ? other : known;
        var seal = wrong == "unsigned" ? "" : Url(key.SignData(Encoding.ASCII.GetBytes(signed), HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1));
        return $"{signed}.{seal}";
    }

    public async ValueTask DisposeAsync()
    {
        await app.DisposeAsync();
        known.Dispose();
        other.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    private Dictionary<string, object> Metadata() => new()
    {
        ["issuer"] = Issuer,
        ["jwks_uri"] = Address + "/keys",
        ["id_token_signing_alg_values_supported"] = new[] { "RS256" },
    };

    private Dictionary<string, object> Keys()
    {
        var parts = known.ExportParameters(includePrivateParameters: false);
        return new()
        {
            ["keys"] = new[] { new { kty = "RSA", use = "sig", kid = "k1", alg = "RS256", n = Url(parts.Modulus!), e = Url(parts.Exponent!), endorsements = new[] { "team" } } },
        };
    }

    private static string Url(byte[] bytes) => Convert.ToBase64String(bytes).TrimEnd('=').Replace('+', '-').Replace('/', '_');
}
