using System.Buffers.Binary;
using System.Text.Json.Nodes;
using Assistant.Channels.Tests.Text;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Quantities;

namespace Assistant.Channels.Tests.Endpoint;

/// <summary>The package for a tenant in <c>deploy/teams</c>. Limits of the public app manifest schema 1.17.</summary>
public sealed class TeamsManifestTests
{
    private static readonly JsonNode Manifest = JsonNode.Parse(File.ReadAllText(Spoken.PathOf("deploy", "teams", "manifest.json")))!;

    [Fact]
    public void What_the_schema_asks_for_is_there_and_within_its_limits()
    {
        foreach (var key in new[] { "$schema", "manifestVersion", "version", "id", "developer", "name", "description", "icons", "accentColor" })
        {
            Assert.NotNull(Manifest[key]);
        }

        Assert.Equal("https://developer.microsoft.com/en-us/json-schemas/teams/v1.17/MicrosoftTeams.schema.json", (string)Manifest["$schema"]!);
        Assert.InRange(((string)Manifest["name"]!["short"]!).Length, 1, 30);
        Assert.InRange(((string)Manifest["description"]!["short"]!).Length, 1, 80);
        Assert.InRange(((string)Manifest["description"]!["full"]!).Length, 1, 4000);
        Assert.InRange(Bot["commandLists"]![0]!["commands"]!.AsArray().Count, 1, 10);
    }

    [Fact]
    public void The_bot_is_the_registration_and_serves_one_person_a_team_and_a_group()
    {
        Assert.Equal((string)Manifest["id"]!, (string)Bot["botId"]!);
        Assert.Equal(["personal", "team", "groupChat"], Bot["scopes"]!.AsArray().Select(s => (string)s!));
    }

    [Fact]
    public void Every_command_of_its_menu_is_understood()
    {
        foreach (var command in Bot["commandLists"]![0]!["commands"]!.AsArray())
        {
            var title = (string)command!["title"]!;
            var understood = Spoken.Understander.Understand(title, new(null, UnitSystem.Us));

            Assert.Equal((Intent.Command, title), (understood.Intent, understood.Command));
        }
    }

    [Theory]
    [InlineData("color", 192)]
    [InlineData("outline", 32)]
    public void Its_icons_have_the_size_they_are_asked_for_in(string icon, int side)
    {
        var png = File.ReadAllBytes(Spoken.PathOf("deploy", "teams", (string)Manifest["icons"]![icon]!));

        Assert.Equal("PNG"u8.ToArray(), png[1..4]);
        Assert.Equal((side, side), (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20))));
    }

    private static JsonNode Bot => Manifest["bots"]![0]!;
}
