using System.Collections.Immutable;

namespace Assistant.Dialogue.Understanding;

/// <summary>A message puts right what was said before it: "no 48 not 84", "i meant cool".</summary>
/// <param name="IsPlain">It says so in words that mean nothing else; a bare "no" before a value may be the answer to a question.</param>
/// <param name="Denied">The numbers it takes back, as they were said.</param>
public sealed record Correcting(bool IsPlain, ImmutableArray<double> Denied);
