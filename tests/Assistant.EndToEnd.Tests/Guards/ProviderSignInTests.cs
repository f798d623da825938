using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Web;

namespace Assistant.EndToEnd.Tests.Guards;

/// <summary>Sign-in by the firm's OpenID Connect provider; the provider here is a small one on loopback.</summary>
public sealed class ProviderSignInTests : IDisposable
{
    private const string Client = "coldwalk-page";

    private readonly RSA key = RSA.Create(2048);
    private readonly Listener provider;
    private string nonce = "";
    private string verifierSeen = "";

    public ProviderSignInTests() => provider = new((request, body) => request.Url!.AbsolutePath switch
    {
        "/.well-known/openid-configuration" => Json(new Dictionary<string, object>
        {
            ["issuer"] = Issuer, ["authorization_endpoint"] = Issuer + "/authorize", ["token_endpoint"] = Issuer + "/token", ["jwks_uri"] = Issuer + "/keys",
            ["response_types_supported"] = new[] { "code" }, ["subject_types_supported"] = new[] { "public" }, ["id_token_signing_alg_values_supported"] = new[] { "RS256" },
        }),
        "/keys" => Json(new { keys = new[] { new { kty = "RSA", use = "sig", kid = "k1", alg = "RS256", n = Url(key.ExportParameters(false).Modulus!), e = Url(key.ExportParameters(false).Exponent!) } } }),
        "/token" => Token(HttpUtility.ParseQueryString(Encoding.UTF8.GetString(body))),
        _ => (404, "text/plain", []),
    });

    [Fact]
    public async Task An_account_the_office_has_named_signs_in_and_another_does_not()
    {
        await using var firm = await FirmServer.StartAsync(new Dictionary<string, string>
        {
            ["COLDWALK_OIDC_AUTHORITY"] = Issuer,
            ["COLDWALK_OIDC_CLIENT_ID"] = Client,
            ["COLDWALK_OIDC_CLIENT_SECRET"] = "an-invented-secret",
        });
        using var door = await firm.SendAsync(HttpMethod.Get, "/enter");
        Assert.Contains("Sign in with the firm's account", await door.Content.ReadAsStringAsync(), StringComparison.Ordinal);

        var (stranger, _) = await SignInAsync(firm);
        Assert.Equal("/enter?trouble=account", stranger);

        await firm.OfficeAsync("account", "Kim", "account-17");
        var (to, cookie) = await SignInAsync(firm);
        Assert.Equal("/visit?id=visit-0001", to);
        using var start = await firm.SendAsync(HttpMethod.Get, "/api/start", cookies: cookie);
        Assert.Equal("Kim", (string?)(await FirmServer.JsonAsync(start))["person"]);
        Assert.NotEqual("", verifierSeen);

        await firm.OfficeAsync("revoke", "Kim");
        using var after = await firm.SendAsync(HttpMethod.Get, "/api/start", cookies: cookie);
        Assert.Equal(HttpStatusCode.Unauthorized, after.StatusCode);
        Assert.DoesNotContain("an-invented-secret", firm.Server.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_answer_that_is_not_the_providers_is_turned_away()
    {
        await using var firm = await FirmServer.StartAsync(new Dictionary<string, string>
        {
            ["COLDWALK_OIDC_AUTHORITY"] = Issuer,
            ["COLDWALK_OIDC_CLIENT_ID"] = Client,
            ["COLDWALK_OIDC_CLIENT_SECRET"] = "an-invented-secret",
        });
        await firm.OfficeAsync("account", "Kim", "account-17");

        using var forged = await firm.SendAsync(HttpMethod.Get, "/enter/provider/back?code=c&state=forged");
        Assert.Equal("/enter?trouble=provider", forged.Headers.Location?.ToString());

        var (to, cookie) = await SignInAsync(firm, told => told + "x");
        Assert.Equal("/enter?trouble=provider", to);
        Assert.DoesNotContain("__Host-coldwalk=", cookie, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        provider.Dispose();
        key.Dispose();
    }

    private string Issuer => provider.Address.ToString().TrimEnd('/');

    /// <summary>As a browser goes: to the provider and back. The provider is content at once.</summary>
    /// <param name="change">What becomes of the nonce on the way.</param>
    private async Task<(string To, string Cookies)> SignInAsync(FirmServer firm, Func<string, string>? change = null)
    {
        using var challenge = await firm.SendAsync(HttpMethod.Get, "/enter/provider?to=" + Uri.EscapeDataString("/visit?id=visit-0001"));
        Assert.Equal(HttpStatusCode.Found, challenge.StatusCode);
        var asked = HttpUtility.ParseQueryString(challenge.Headers.Location!.Query);
        Assert.Equal("https://coldwalk.example/enter/provider/back", asked["redirect_uri"]);
        Assert.Equal("S256", asked["code_challenge_method"]);
        nonce = change is null ? asked["nonce"]! : change(asked["nonce"]!);
        using var back = await firm.SendAsync(HttpMethod.Get, $"/enter/provider/back?code=c&state={Uri.EscapeDataString(asked["state"]!)}", cookies: Cookies(challenge));
        if (back.Headers.Location?.ToString() is { } elsewhere && !elsewhere.Contains("/enter/provider/known", StringComparison.Ordinal))
        {
            return (elsewhere, Cookies(back));
        }

        using var known = await firm.SendAsync(HttpMethod.Get, back.Headers.Location!.ToString(), cookies: Cookies(back));
        return (known.Headers.Location!.ToString(), Cookies(known));
    }

    private static string Cookies(HttpResponseMessage response) => response.Headers.TryGetValues("Set-Cookie", out var set) ? string.Join("; ", set.Select(c => c.Split(';')[0])) : "";

    private (int, string, byte[]) Token(System.Collections.Specialized.NameValueCollection asked)
    {
        verifierSeen = asked["code_verifier"] ?? "";
        var now = DateTimeOffset.UtcNow.ToUnixTimeSeconds();
        var head = Url(JsonSerializer.SerializeToUtf8Bytes(new { alg = "RS256", typ = "JWT", kid = "k1" }));
        var claims = Url(JsonSerializer.SerializeToUtf8Bytes(new { iss = Issuer, aud = Client, sub = "account-17", nonce, iat = now, nbf = now, exp = now + 300 }));
        var seal = Url(key.SignData(Encoding.ASCII.GetBytes($"{head}.{claims}"), HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1));
        return Json(new { access_token = "a", token_type = "Bearer", expires_in = 300, id_token = $"{head}.{claims}.{seal}" });
    }

    private static (int, string, byte[]) Json(object body) => (200, "application/json", JsonSerializer.SerializeToUtf8Bytes(body));

    private static string Url(byte[] bytes) => Convert.ToBase64String(bytes).TrimEnd('=').Replace('+', '-').Replace('/', '_');
}
