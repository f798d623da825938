using Assistant.Channels.Endpoint;
using Microsoft.Bot.Connector;
using Microsoft.Bot.Connector.Authentication;
using Moq;

namespace Assistant.Channels.Tests.Endpoint;

public class CachedConnectorsTests
{
    private readonly Mock<ConnectorFactory> inner = new();

    public CachedConnectorsTests() => inner
        .Setup(f => f.CreateAsync(It.IsAny<string>(), It.IsAny<string>(), It.IsAny<CancellationToken>()))
        .ReturnsAsync(() => Mock.Of<IConnectorClient>());

    [Fact]
    public async Task One_service_address_gets_one_client()
    {
        var factory = new CachedConnectors(inner.Object, new());

        var first = await factory.CreateAsync("http://127.0.0.1:1/", "a", CancellationToken.None);

        Assert.Same(first, await factory.CreateAsync("http://127.0.0.1:1/", "a", CancellationToken.None));
        Assert.NotSame(first, await factory.CreateAsync("http://127.0.0.1:2/", "a", CancellationToken.None));
    }

    [Fact]
    public async Task A_client_outlives_the_turn_that_disposes_of_it()
    {
        var client = new Mock<IConnectorClient>();
        inner.Setup(f => f.CreateAsync(It.IsAny<string>(), It.IsAny<string>(), It.IsAny<CancellationToken>())).ReturnsAsync(client.Object);

        (await new CachedConnectors(inner.Object, new()).CreateAsync("http://127.0.0.1:1/", "a", CancellationToken.None)).Dispose();

        client.Verify(c => c.Dispose(), Times.Never);
    }

    [Fact]
    public async Task Addresses_beyond_the_sixty_fourth_are_served_and_not_kept()
    {
        var factory = new CachedConnectors(inner.Object, new());
        for (var port = 1; port <= 64; port++)
        {
            await factory.CreateAsync($"http://127.0.0.1:{port}/", "a", CancellationToken.None);
        }

        var one = await factory.CreateAsync("http://127.0.0.1:65/", "a", CancellationToken.None);

        Assert.NotSame(one, await factory.CreateAsync("http://127.0.0.1:65/", "a", CancellationToken.None));
    }

    [Fact]
    public async Task A_client_that_could_not_be_made_is_tried_again()
    {
        inner.SetupSequence(f => f.CreateAsync(It.IsAny<string>(), It.IsAny<string>(), It.IsAny<CancellationToken>()))
            .ThrowsAsync(new InvalidOperationException("no token"))
            .ReturnsAsync(Mock.Of<IConnectorClient>());
        var factory = new CachedConnectors(inner.Object, new());

        await Assert.ThrowsAsync<InvalidOperationException>(() => factory.CreateAsync("http://127.0.0.1:1/", "a", CancellationToken.None));

        Assert.NotNull(await factory.CreateAsync("http://127.0.0.1:1/", "a", CancellationToken.None));
    }
}
