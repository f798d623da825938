using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text.RegularExpressions;
using Assistant.EndToEnd.Tests.Fixtures;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

/// <summary>Beyond this machine there is TLS, and everyone signs in with a code of their own.</summary>
[Collection(PhoneGroup.Name)]
public sealed partial class SignInTests(Phone phone) : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-tls-").FullName;

    [Fact]
    public async Task Without_tls_or_without_people_the_page_is_not_opened_to_others()
    {
        var bare = await AppRun.OfAsync(["serve", "--listen", "0.0.0.0", "--port", "0", "--data", folder]);
        Certificate();
        var empty = await AppRun.OfAsync(["serve", "--port", "0", "--data", folder, .. Tls]);

        Assert.Equal(1, bare.ExitCode);
        Assert.Equal("--listen 0.0.0.0: beyond this machine the page is served with TLS only. Give --certificate FILE, or --proxy ADDRESS of a proxy that does it.\n", bare.Error);
        Assert.Equal(1, empty.ExitCode);
        Assert.StartsWith("Where others can come, people sign in", empty.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Over_tls_a_phone_signs_in_once_with_its_code_and_speaks_under_the_persons_name()
    {
        Certificate();
        var code = await PersonWithCodeAsync("Kim");
        using var server = new AppServer(folder, Tls);
        await server.InitializeAsync();
        var page = await phone.NewPageAsync(server: server);
        await page.GotoAsync("/");
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/enter"));
        await Phone.ShootAsync(page, "enter");
        await PageChecks.AccessibleDayAndNightAsync(page);
        await page.Locator("#code").FillAsync("wrong-code");
        await page.Locator("#code").PressAsync("Enter");
        await Assertions.Expect(page.Locator(".trouble")).ToContainTextAsync("not known");

        await page.Locator("#code").FillAsync(code);
        await page.Locator("#code").PressAsync("Enter");
        await Assertions.Expect(page.Locator("#signed-name")).ToHaveTextAsync("Kim");
        await Talk.OpenDemoAsync(page);
        await Talk.UntilAskedAsync(page, "setpoint");
        await page.Locator("#show-readings").ClickAsync();
        await Assertions.Expect(page.Locator("#readings-list .reading").Filter(new() { HasText = "second thermometer" })).ToContainTextAsync("Kim");
        Assert.True(await page.EvaluateAsync<bool>("isSecureContext && !document.cookie"));

        var second = await phone.NewPageAsync(server: server);
        await second.GotoAsync("/enter");
        await second.Locator("#code").FillAsync(code);
        await second.Locator("#code").PressAsync("Enter");
        await Assertions.Expect(second.Locator(".trouble")).ToContainTextAsync("was used");
        await server.KillAsync();
    }

    [Fact]
    public async Task An_invitation_opened_on_the_phone_fills_the_code_in_and_only_the_sign_in_uses_it()
    {
        Certificate();
        await PersonWithCodeAsync("Kim");
        using var server = new AppServer(folder, Tls);
        await server.InitializeAsync();
        var invited = await AppRun.OfAsync(["people", "code", "Kim", "--address", server.Address.ToString(), "--data", folder]);
        var link = LinkPattern().Match(invited.Output).Value;
        Assert.StartsWith($"{server.Address}enter?code=", link, StringComparison.Ordinal);
        Assert.Contains('█', invited.Output);
        using (var previewed = await server.Client.GetAsync(link))
        {
            Assert.Equal(HttpStatusCode.OK, previewed.StatusCode);
        }

        var page = await phone.NewPageAsync(server: server);
        await page.GotoAsync(link);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await Assertions.Expect(page.Locator("#signed-name")).ToHaveTextAsync("Kim");

        var nowhere = await AppRun.OfAsync(["people", "code", "Kim", "--address", "coldwalk", "--data", folder]);
        Assert.Equal((2, "", "--address coldwalk: where \"serve\" is reached is wanted, such as https://coldwalk.example.\n"), (nowhere.ExitCode, nowhere.Output, nowhere.Error));
        using var odd = await server.Client.GetAsync("/enter?code=%22%3E%3Cscript%3E");
        Assert.DoesNotContain("<script>", await odd.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await server.KillAsync();
    }

    [Fact]
    public async Task A_stranger_gets_nothing_over_tls_and_a_foreign_name_is_refused()
    {
        Certificate();
        await PersonWithCodeAsync("Kim");
        using var server = new AppServer(folder, Tls);
        await server.InitializeAsync();

        foreach (var path in new[] { "/api/start", "/api/visits/visit-0001", "/api/facts", "/tables.json", "/api/search?q=dairy" })
        {
            using var response = await server.Client.GetAsync(path);
            Assert.True(response.StatusCode is HttpStatusCode.Unauthorized || response.RequestMessage!.RequestUri!.AbsolutePath == "/enter", path);
        }

        using var shell = await server.Client.GetAsync("/sw.js");
        Assert.Equal(HttpStatusCode.OK, shell.StatusCode);
        Assert.Contains("max-age", Assert.Single(shell.Headers.GetValues("Strict-Transport-Security")), StringComparison.Ordinal);
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.Host = "elsewhere.example";
        using var foreign = await server.Client.SendAsync(request);
        Assert.Equal(HttpStatusCode.Forbidden, foreign.StatusCode);
        await server.KillAsync();
    }

    [Fact]
    public async Task Behind_a_proxy_only_what_came_to_it_over_https_under_the_right_name_is_answered()
    {
        await PersonWithCodeAsync("Kim");
        using var server = new AppServer(folder, ["--proxy", "127.0.0.1", "--host-name", "coldwalk.example"]);
        await server.InitializeAsync();

        Assert.Equal(HttpStatusCode.OK, await ThroughAsync(server, "/enter", "coldwalk.example", "https"));
        Assert.Equal(HttpStatusCode.Unauthorized, await ThroughAsync(server, "/api/start", "coldwalk.example", "https"));
        Assert.Equal(HttpStatusCode.Forbidden, await ThroughAsync(server, "/enter", "coldwalk.example", "http"));
        Assert.Equal(HttpStatusCode.Forbidden, await ThroughAsync(server, "/enter", "coldwalk.example", null));
        Assert.Equal(HttpStatusCode.Forbidden, await ThroughAsync(server, "/enter", "elsewhere.example", "https"));
        await server.KillAsync();
    }

    public void Dispose()
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private string[] Tls => ["--certificate", Path.Combine(folder, "page.pem"), "--certificate-key", Path.Combine(folder, "page.key")];

    private static async Task<HttpStatusCode> ThroughAsync(AppServer server, string path, string host, string? scheme)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.Host = host;
        if (scheme is not null)
        {
            request.Headers.Add("X-Forwarded-Proto", scheme);
        }

        using var response = await server.Client.SendAsync(request);
        return response.StatusCode;
    }

    private async Task<string> PersonWithCodeAsync(string name)
    {
        var added = await AppRun.OfAsync(["people", "add", name, "--firm", "Invented Cooling", "--data", folder]);
        Assert.Equal(0, added.ExitCode);
        var code = await AppRun.OfAsync(["people", "code", name, "--data", folder]);
        return CodePattern().Match(code.Output).Value;
    }

    private void Certificate()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName("localhost");
        names.AddIpAddress(IPAddress.Loopback);
        var request = new CertificateRequest("CN=localhost", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(names.Build());
        using var certificate = request.CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(1));
        File.WriteAllText(Path.Combine(folder, "page.pem"), certificate.ExportCertificatePem());
        File.WriteAllText(Path.Combine(folder, "page.key"), key.ExportPkcs8PrivateKeyPem());
    }

    [GeneratedRegex(@"https://\S+")]
    private static partial Regex LinkPattern();

    [GeneratedRegex(@"^\S+")]
    private static partial Regex CodePattern();
}
