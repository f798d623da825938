namespace Assistant.Dialogue.Files;

/// <summary>One text file of the dialogue's data as the edge read it; the dialogue itself opens no files.</summary>
/// <param name="Path">As it is named in an error, such as dialogs/phrases/en.yaml.</param>
public sealed record DialogFile(string Path, string Text);
