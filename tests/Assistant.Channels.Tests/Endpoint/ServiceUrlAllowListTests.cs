using Assistant.Channels.Endpoint;

namespace Assistant.Channels.Tests.Endpoint;

public class ServiceUrlAllowListTests
{
    private static readonly ServiceUrlAllowList Listed = new(["chat.example", ".relay.example"]);

    [Theory]
    [InlineData("http://127.0.0.1:3978/")]
    [InlineData("http://localhost:3978")]
    [InlineData("http://[::1]:3978")]
    [InlineData("https://chat.example/emea/")]
    [InlineData("https://eu.relay.example/")]
    public void This_machine_and_listed_hosts_are_served(string url) => Assert.True(Listed.Allows(url));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("not an address")]
    [InlineData("http://chat.example/")]
    [InlineData("https://other.example/")]
    [InlineData("https://chat.example.other.example/")]
    [InlineData("https://relay.example/")]
    [InlineData("https://localhost.other.example/")]
    [InlineData("https://chat.example@other.example/")]
    [InlineData("https://127.0.0.1.other.example/")]
    [InlineData("ftp://127.0.0.1/")]
    [InlineData("file:///etc/passwd")]
    [InlineData("http://169.254.169.254/")]
    public void Anything_else_is_refused(string? url) => Assert.False(Listed.Allows(url));
}
