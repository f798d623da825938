using System.Collections.Immutable;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding;

/// <summary>The wish that whoever is on site takes a reading, or that they need not any more.</summary>
/// <param name="Facts">What is wanted, in the order it was said; empty where the words name no fact.</param>
/// <param name="Words">What is wanted in the speaker's words.</param>
public sealed record RequestSaid(ImmutableArray<Fact> Facts, string Words, bool IsDropped);
