namespace Assistant.Dialogue.Files;

/// <summary>One mistake in a file of the dialogue's data, with where it stands.</summary>
/// <param name="Line">From 1.</param>
/// <param name="Key">The phrase, stop or field it is about.</param>
/// <param name="Message">What is wrong and what would be right.</param>
public sealed record DialogDefect(DefectKind Kind, string File, int Line, string Key, string Message)
{
    public override string ToString() => $"{File}:{Line}: {Key}: {Message}";
}
