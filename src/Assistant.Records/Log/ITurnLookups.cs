using Assistant.Records.Cylinders;

namespace Assistant.Records.Log;

/// <summary>What is asked of the records before every turn, or whenever a visit opens, as fast as the database can say it. Safe for use by many at once.</summary>
internal interface ITurnLookups : IDisposable
{
    /// <summary>The visit a conversation is on now and when it was closed, or null.</summary>
    Task<CurrentVisit?> CurrentVisitAsync(string channel, string conversation, CancellationToken cancellation);

    /// <summary>True where a firm is set up: then people are enrolled, and nobody else is heard.</summary>
    Task<bool> HasFirmsAsync(CancellationToken cancellation);

    /// <summary>The events that tell of cylinders, visit by visit in their order.</summary>
    /// <param name="since">Of visits opened then or later; null for all.</param>
    /// <param name="until">Of visits opened then or before; null for all.</param>
    Task<IReadOnlyList<CylinderRow>> CylinderRowsAsync(DateTimeOffset? since, DateTimeOffset? until, CancellationToken cancellation);
}
