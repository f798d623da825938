using System.Net;
using System.Text;

namespace Assistant.EndToEnd.Tests.Guards;

/// <summary>Another program calls with a key of a person's.</summary>
public sealed class ApiKeyTests
{
    [Fact]
    public async Task A_key_calls_as_its_person_until_it_is_revoked_and_stands_nowhere_on_the_disk()
    {
        await using var firm = await FirmServer.StartAsync();
        var key = await firm.KeyAsync();

        using var stranger = await firm.SendAsync(HttpMethod.Get, "/api/start");
        using var known = await firm.SendAsync(HttpMethod.Get, "/api/start", key: key);
        using var wrong = await firm.SendAsync(HttpMethod.Get, "/api/start", key: key[..^1] + (key[^1] == '0' ? '1' : '0'));

        Assert.Equal(HttpStatusCode.Unauthorized, stranger.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
        Assert.Equal("Kim", (string?)(await FirmServer.JsonAsync(known))["person"]);
        foreach (var file in Directory.EnumerateFiles(firm.Data, "coldwalk.db*"))
        {
            using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var bytes = new MemoryStream();
            await stream.CopyToAsync(bytes);
            Assert.Equal(-1, bytes.ToArray().AsSpan().IndexOf(Encoding.ASCII.GetBytes(key["coldwalk_".Length..])));
        }

        var digest = Assert.Single((await firm.OfficeAsync("list")).Output.Split('\n'), l => l.StartsWith("  key ", StringComparison.Ordinal)).Split(' ')[3];
        await firm.OfficeAsync("revoke", "Kim", "--channel", "key", "--address", digest);
        using var after = await firm.SendAsync(HttpMethod.Get, "/api/start", key: key);
        Assert.Equal(HttpStatusCode.Unauthorized, after.StatusCode);
        Assert.DoesNotContain(key, firm.Server.Errors, StringComparison.Ordinal);
    }
}
