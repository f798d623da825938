using System.Collections.Immutable;

namespace Assistant.Dialogue.Replies;

/// <summary>The words the dialogue offers of its own, beside the choices of facts, the options of walks and yes, no, ok, done, later.</summary>
public static class OwnChoices
{
    /// <summary>Where refrigerant went.</summary>
    public static ImmutableArray<string> Purposes { get; } = ["charged", "recovered", "moved", "lost"];

    /// <summary>At what may not be readable.</summary>
    public static ImmutableArray<string> Unreadable { get; } = ["don't know"];

    /// <summary>At a temperature near zero, as it is said.</summary>
    public static ImmutableArray<string> Signs { get; } = ["above zero", "below zero"];

    public static IEnumerable<string> All => [.. Purposes, .. Unreadable, .. Signs];
}
