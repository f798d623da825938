namespace Assistant.Dialogue.Visits;

/// <summary>What happened at a stop of a walk's run.</summary>
public enum StopMarkKind
{
    /// <summary>It was left out.</summary>
    Skipped,

    /// <summary>A word said that it is done.</summary>
    Confirmed,

    /// <summary>One of its options was named.</summary>
    Chosen,

    /// <summary>Its judgement was said.</summary>
    Judged,

    /// <summary>The walk comes by here again: what happened at the stop before counts no more.</summary>
    Reopened,

    /// <summary>The walk came to stand here.</summary>
    Reached,
}

/// <summary>One thing that happened at a stop.</summary>
/// <param name="Number">The event that says so.</param>
/// <param name="Word">The option chosen, or the outcome judged; otherwise null.</param>
/// <param name="Since">The last message before it, or the event that had the stop passed anew where that is later: what came after may answer it.</param>
public sealed record StopMark(int Number, string Stop, StopMarkKind Kind, string? Word, int Since);
