using Assistant.Voice;

namespace Assistant.App.Hosting;

/// <summary>Voice for this program, made when it is first wanted and not before: a call that is typed carries none of it.</summary>
public sealed class VoiceHost(CallRoom room) : IDisposable
{
    private readonly Lock making = new();
    private VoiceRoom? made;

    /// <exception cref="VoicePartMissingException">A part is not installed; asked again later, it is looked for again.</exception>
    /// <exception cref="Dialogue.Files.DialogDataException">A file has mistakes.</exception>
    public VoiceRoom Open()
    {
        lock (making)
        {
            return made ??= VoiceRoom.Open(DialogFiles.Read("lexicon"), DialogFiles.Read("voice"), room.Dialogue.Phrases, room.Dialogue.Understander, room.Dialogue.Walks);
        }
    }

    public void Dispose() => made?.Dispose();
}
