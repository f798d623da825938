using Assistant.Channels.Endpoint;

namespace Assistant.App.Hosting;

/// <summary>The bot's registration from the environment; without one only this machine is answered.</summary>
internal static class BotEnvironment
{
    public static BotSettings Read() => new(
        Named("COLDWALK_BOT_APP_ID"),
        Named("COLDWALK_BOT_PASSWORD"),
        Named("COLDWALK_BOT_TENANT"),
        Named("COLDWALK_BOT_SERVICE_HOSTS").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
    {
        Cloud = Named("COLDWALK_BOT_METADATA") is { Length: > 0 } metadata
            ? new(metadata, Named("COLDWALK_BOT_ISSUER"), Named("COLDWALK_BOT_LOGIN"), Named("COLDWALK_BOT_SCOPE"))
            : null,
    };

    private static string Named(string name) => Secrets.Read(name);
}
