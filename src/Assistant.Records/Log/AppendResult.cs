using Assistant.Dialogue.Replies;

namespace Assistant.Records.Log;

/// <summary>What became of an append. In every case what it says is on the disk.</summary>
public abstract record AppendResult;

/// <summary>The events are stored.</summary>
/// <param name="Version">The number of the last of them.</param>
public sealed record Appended(int Version) : AppendResult;

/// <summary>The message had been applied before: nothing was changed.</summary>
/// <param name="Reply">The reply it got then.</param>
public sealed record AlreadyApplied(Reply Reply) : AppendResult;

/// <summary>Others wrote first: nothing was changed; read again and try again.</summary>
public sealed record Conflict : AppendResult;
