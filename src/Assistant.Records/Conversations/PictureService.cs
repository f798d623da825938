using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Pictures;
using Assistant.Records.Storage;
using Assistant.Trade.Quantities;

namespace Assistant.Records.Conversations;

/// <summary>A picture as a channel hands it over.</summary>
/// <param name="Stop">The stop of the walk it was taken at, or null.</param>
public sealed record InboundPicture(string Channel, string Conversation, string Person, DateTimeOffset At, byte[] File, string Caption, string? Stop = null);

/// <summary>A picture in a visit's log.</summary>
/// <param name="WasThere">True where the visit had this picture already: nothing was added.</param>
public sealed record AddedPicture(string VisitId, string PictureId, int EventNumber, bool WasThere);

/// <summary>Takes pictures into the visit a conversation is on.</summary>
public sealed class PictureService(EventLog log, PictureStore pictures, ConversationService conversations)
{
    private const int Attempts = 20;

    /// <summary>Keeps the picture and notes it in the visit; one opens first where the conversation is on none. The same picture again changes nothing.</summary>
    /// <exception cref="PictureRefusedException">It can not be kept as a picture.</exception>
    /// <exception cref="RecordsException">The records can not be written; the visit is as it was.</exception>
    public async Task<AddedPicture> AddAsync(InboundPicture picture, UnitSystem units = UnitSystem.Us, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var kept = await pictures.KeepAsync(picture.File, cancellation);
        var visitId = await log.VisitOfAsync(picture.Channel, picture.Conversation, cancellation)
            ?? (await conversations.OpenVisitAsync(new(picture.Channel, picture.Conversation, null, null, units, picture.Person, picture.At), cancellation)).VisitId;
        var taken = new PictureTaken(kept.Id, picture.Caption, picture.Stop) { At = picture.At, By = picture.Person };
        for (var attempt = 0; attempt < Attempts; attempt++)
        {
            var events = await log.ReadAsync(visitId, cancellation);
            if (events.OfType<PictureTaken>().FirstOrDefault(p => p.PictureId == kept.Id) is { } before)
            {
                return new(visitId, kept.Id, before.Number, WasThere: true);
            }

            if (await log.AppendAsync(new(visitId, events.Length, [taken])) is Appended appended)
            {
                return new(visitId, kept.Id, appended.Version, WasThere: false);
            }
        }

        throw new RecordsException(RecordsFault.Contended, "Others wrote to this visit at the same time again and again. The picture was not added; send it again.");
    }
}
