using System.Collections.Immutable;

namespace Assistant.Dialogue.Files;

/// <summary>The dialogue's data has mistakes: every one that was found, with file, line and key.</summary>
public sealed class DialogDataException(ImmutableArray<DialogDefect> defects)
    : Exception(string.Join('\n', defects.Select(d => d.ToString())))
{
    public ImmutableArray<DialogDefect> Defects { get; } = defects;
}
