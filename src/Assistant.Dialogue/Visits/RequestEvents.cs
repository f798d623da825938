namespace Assistant.Dialogue.Visits;

/// <summary>Somebody wants a fact read by whoever is on site.</summary>
public sealed record ReadingRequested(string Fact) : VisitEvent;

/// <summary>What was asked for is not wanted any more, or can not be had.</summary>
/// <param name="Request">The event that asked for it.</param>
public sealed record RequestDropped(int Request) : VisitEvent;

/// <summary>Who asked was told what became of it.</summary>
/// <param name="Request">The event that asked for it.</param>
public sealed record RequestTold(int Request) : VisitEvent;
