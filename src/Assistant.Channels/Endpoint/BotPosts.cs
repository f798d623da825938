using System.Net;
using System.Security.Claims;
using Assistant.Channels.Rooms;
using Assistant.Records.Outbox;
using Assistant.Records.Rooms;
using Microsoft.Bot.Connector;
using Microsoft.Bot.Connector.Authentication;
using Microsoft.Bot.Schema;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Endpoint;

/// <summary>
/// Writes to conversations unasked, by what is on record of them and with the connector client kept for their service. A conversation that
/// is gone, or that the bot was removed from, is taken off its visit.
/// </summary>
internal sealed partial class BotPosts(BotFrameworkAuthentication authentication, BotSettings settings, ServiceUrlAllowList allowed, RoomStore rooms, TimeProvider clock, ILogger<BotPosts> logger) : IRoomPoster
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(15);

    private readonly ConnectorFactory connectors = authentication.CreateConnectorFactory(new ClaimsIdentity(
    [
        new(AuthenticationConstants.AudienceClaim, settings.AppId),
        new(AuthenticationConstants.AppIdClaim, settings.AppId),
    ]));

    /// <summary>Makes one attempt to post.</summary>
    public async Task<Sent> SendAsync(Room room, Activity activity, CancellationToken cancellation)
    {
        try
        {
            return await PostAsync(room, activity, cancellation) is null ? new Refused("its service is not on the list") : new HandedOver();
        }
        catch (ErrorResponseException gone) when (IsGone(gone))
        {
            await ForgetAsync(room, gone, cancellation);
            return new Refused("the conversation is gone");
        }
        catch (Exception failure) when (failure is ErrorResponseException or HttpRequestException)
        {
            return new NotSent(failure.Message);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return new InDoubt("its service did not answer");
        }
    }

    public async Task<string?> PutAsync(Room room, string text, CancellationToken cancellation)
    {
        var activity = (Activity)Activity.CreateMessageActivity();
        (activity.Text, activity.TextFormat) = (text.Replace("\n", "\n\n", StringComparison.Ordinal), TextFormatTypes.Plain);
        try
        {
            return room.SummaryId is { } there && await EditAsync(room, there, activity, cancellation) ? there : await PostAsync(room, activity, cancellation);
        }
        catch (ErrorResponseException never) when (never.Response.StatusCode is HttpStatusCode.MethodNotAllowed or HttpStatusCode.NotImplemented)
        {
            // Posted anew at every change it would drown the thread: it is said at each verdict from now on.
            await rooms.CanNotEditAsync(room, cancellation);
        }
        catch (ErrorResponseException gone) when (IsGone(gone))
        {
            await ForgetAsync(room, gone, cancellation);
        }
        catch (Exception failure) when (failure is ErrorResponseException or HttpRequestException || (failure is OperationCanceledException && !cancellation.IsCancellationRequested))
        {
            NotSummedUp(logger, room.Channel, failure.Message);
        }

        return null;
    }

    /// <returns>The post's id, or null where nothing may be sent to that service.</returns>
    private async Task<string?> PostAsync(Room room, Activity activity, CancellationToken cancellation)
    {
        using var patience = Waiting(cancellation);
        return await PrepareAsync(room, activity, patience.Token) is { } client
            ? (await client.Conversations.SendToConversationAsync(room.Conversation, activity, patience.Token)).Id ?? ""
            : null;
    }

    /// <returns>False where the post can not be changed any more.</returns>
    private async Task<bool> EditAsync(Room room, string postId, Activity activity, CancellationToken cancellation)
    {
        using var patience = Waiting(cancellation);
        if (postId.Length == 0 || await PrepareAsync(room, activity, patience.Token) is not { } client)
        {
            return false;
        }

        try
        {
            activity.Id = postId;
            await client.Conversations.UpdateActivityAsync(room.Conversation, postId, activity, patience.Token);
            return true;
        }
        catch (ErrorResponseException missing) when (missing.Response.StatusCode is HttpStatusCode.NotFound)
        {
            // Somebody deleted it: it is posted anew.
            activity.Id = null;
            return false;
        }
    }

    // The list may be another than when the reference was noted.
    private async Task<IConnectorClient?> PrepareAsync(Room room, Activity activity, CancellationToken cancellation)
    {
        if (BotReference.Read(room) is not { } reference || !allowed.Allows(reference.ServiceUrl))
        {
            return null;
        }

        activity.ApplyConversationReference(reference);
        return await connectors.CreateAsync(reference.ServiceUrl, authentication.GetOriginatingAudience(), cancellation);
    }

    private async Task ForgetAsync(Room room, ErrorResponseException gone, CancellationToken cancellation)
    {
        await rooms.ForgetAsync(room.Channel, room.Conversation, clock.GetUtcNow(), "the conversation is gone", cancellation);
        Gone(logger, room.Channel, gone.Response.StatusCode);
    }

    private static bool IsGone(ErrorResponseException failure) => failure.Response.StatusCode is HttpStatusCode.NotFound or HttpStatusCode.Forbidden or HttpStatusCode.Gone;

    private static CancellationTokenSource Waiting(CancellationToken cancellation)
    {
        var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        patience.CancelAfter(Patience);
        return patience;
    }

    [LoggerMessage(LogLevel.Warning, "Bot: a conversation on {Channel} is gone ({Status}), and is on no visit any more")]
    private static partial void Gone(ILogger logger, string channel, HttpStatusCode status);

    [LoggerMessage(LogLevel.Warning, "Bot: a summary on {Channel} waits: {Message}")]
    private static partial void NotSummedUp(ILogger logger, string channel, string message);
}
