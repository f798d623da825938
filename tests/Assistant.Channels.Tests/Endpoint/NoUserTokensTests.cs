using Assistant.Channels.Endpoint;

namespace Assistant.Channels.Tests.Endpoint;

public class NoUserTokensTests
{
    [Fact]
    public async Task Whoever_asks_for_a_token_is_told_that_nobody_signs_in_so_also_after_a_turn_has_disposed_of_it()
    {
        NoUserTokens.Instance.Dispose();

        await Assert.ThrowsAsync<NotSupportedException>(() => NoUserTokens.Instance.GetUserTokenAsync("u", "c", "test", "", CancellationToken.None));
    }
}
