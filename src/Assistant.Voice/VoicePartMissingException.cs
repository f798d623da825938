namespace Assistant.Voice;

/// <summary>A part that voice needs is not on this machine. The message is one line that says what to install; the chat works without it.</summary>
public sealed class VoicePartMissingException(string message) : Exception(message);
