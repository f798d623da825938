using System.Runtime.InteropServices;
using Assistant.Voice;
using Assistant.Voice.Sound;

namespace Assistant.App.Web.Voice;

/// <summary>Voice on the page: sound from its microphone comes as 16-bit, one-channel PCM; it is heard here, not kept, and goes nowhere else.</summary>
internal static class VoiceEndpoints
{
    private const int LeastRate = 8_000;
    private const int MostRate = 96_000;

    /// <summary>Twenty seconds at the recogniser's rate; a piece of a running sound is a sixteenth of a second.</summary>
    private const int LargestSound = 20 * PcmAudio.HearingRate * 2;

    public static void MapVoice(this WebApplication app)
    {
        var voice = app.MapGroup("/api/visits/{id}/voice/{talk}").WithMetadata(new BodyLimit(LargestSound));
        voice.MapPost("/start", (string id, string talk, string? by, HttpContext context, VoiceDesk desk, CancellationToken cancellation) =>
            TurnAsync(id, talk, by, context, desk, spoken => spoken.StartAsync(cancellation), cancellation));
        voice.MapPost("/utterance", (string id, string talk, string? by, int? rate, HttpContext context, VoiceDesk desk, CancellationToken cancellation) =>
            TurnAsync(id, talk, by, context, desk, async spoken => await spoken.HearAsync(await SoundAsync(context.Request, rate, cancellation), cancellation), cancellation));
        voice.MapPost("/piece", (string id, string talk, string? by, int? rate, bool? speaking, HttpContext context, VoiceDesk desk, CancellationToken cancellation) =>
            TurnAsync(id, talk, by, context, desk, async spoken =>
            {
                var piece = await SoundAsync(context.Request, rate, cancellation);
                return await (speaking == true ? spoken.ListenWhileSpeakingAsync(piece, cancellation) : spoken.ListenAsync(piece, cancellation));
            }, cancellation));
    }

    private static async Task<VoiceView> TurnAsync(string id, string talk, string? by, HttpContext context, VoiceDesk desk, Func<PageTalk, Task<VoiceView>> turn, CancellationToken cancellation)
    {
        try
        {
            return await turn(await desk.TalkAsync(new(RequestRules.Id(id), RequestRules.Id(talk), SignIn.NameOf(context, by)), cancellation));
        }
        catch (VoicePartMissingException missing)
        {
            throw new RequestRefused($"{missing.Message}. The chat works without it.", StatusCodes.Status501NotImplemented);
        }
    }

    private static async Task<PcmAudio> SoundAsync(HttpRequest request, int? rate, CancellationToken cancellation)
    {
        if (request.ContentType != "application/octet-stream")
        {
            throw new RequestRefused("Sound is wanted: 16-bit PCM of one channel as application/octet-stream.", StatusCodes.Status415UnsupportedMediaType);
        }

        if (rate is < LeastRate or > MostRate)
        {
            throw new RequestRefused($"rate: {LeastRate} to {MostRate} samples a second.");
        }

        using var body = new MemoryStream();
        await request.Body.CopyToAsync(body, cancellation);
        return new(MemoryMarshal.Cast<byte, short>(body.GetBuffer().AsSpan(0, (int)body.Length & ~1)).ToArray(), rate ?? PcmAudio.HearingRate);
    }
}
