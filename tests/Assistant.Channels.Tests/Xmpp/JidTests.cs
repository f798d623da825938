using Assistant.Channels.Xmpp;

namespace Assistant.Channels.Tests.Xmpp;

/// <summary>Addresses after RFC 7622.</summary>
public class JidTests
{
    [Theory]
    [InlineData("kim@chat.example", "kim", "chat.example", null)]
    [InlineData("Kim@Chat.Example/Phone 1", "kim", "chat.example", "Phone 1")]
    [InlineData("chat.example", null, "chat.example", null)]
    [InlineData("service@rooms.chat.example/a@b/c", "service", "rooms.chat.example", "a@b/c")]
    public void Local_part_domain_and_resource_are_told_apart(string text, string? local, string domain, string? resource)
    {
        var jid = Jid.Parse(text);

        Assert.Equal((local, domain, resource), (jid.Local, jid.Domain, jid.Resource));
    }

    [Theory]
    [InlineData("")]
    [InlineData("@chat.example")]
    [InlineData("kim@")]
    [InlineData("kim@chat.example/")]
    [InlineData("ki m@chat.example")]
    [InlineData("kim<@chat.example")]
    [InlineData("kim@chat.example/\u0007")]
    public void What_is_no_address_is_refused(string text) => Assert.False(Jid.TryParse(text, out _));
}
