namespace Assistant.Dialogue.Visits;

/// <summary>A person who works alone is asked at <paramref name="Ask"/> whether all is well; without a word until <paramref name="Alert"/> the contact is alerted.</summary>
/// <param name="Every">How often it is asked.</param>
/// <param name="Contact">The name of the person who is alerted.</param>
/// <param name="Replaces">The event of the one before, which is settled; 0 where this is the first.</param>
public sealed record CheckInExpected(TimeSpan Every, DateTimeOffset Ask, DateTimeOffset Alert, [property: Personal] string Contact, int Replaces) : VisitEvent;

/// <summary>The person is not asked any more.</summary>
/// <param name="Last">The event that is settled.</param>
public sealed record CheckInEnded(int Last) : VisitEvent;
