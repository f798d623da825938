namespace Assistant.Records.Log;

/// <summary>What is asked of the records before every turn, as fast as the database can say it. Safe for use by many at once.</summary>
internal interface ITurnLookups : IDisposable
{
    /// <summary>The visit a conversation is on now and when it was closed, or null.</summary>
    Task<CurrentVisit?> CurrentVisitAsync(string channel, string conversation, CancellationToken cancellation);

    /// <summary>True where a firm is set up: then people are enrolled, and nobody else is heard.</summary>
    Task<bool> HasFirmsAsync(CancellationToken cancellation);
}
