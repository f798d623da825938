using Assistant.Records.Assets;
using Assistant.Records.Conversations;
using Assistant.Records.Cylinders;

namespace Assistant.Records.Log;

/// <summary>What is asked of the records before every turn, whenever a visit opens, or first of all after a start, as fast as the database can say it. Safe for use by many at once.</summary>
internal interface ITurnLookups : IDisposable
{
    /// <summary>The visit a conversation is on now and when it was closed, or null.</summary>
    Task<CurrentVisit?> CurrentVisitAsync(string channel, string conversation, CancellationToken cancellation);

    /// <summary>True where a firm is set up: then people are enrolled, and nobody else is heard.</summary>
    Task<bool> HasFirmsAsync(CancellationToken cancellation);

    /// <summary>The visits that a channel's conversations are on and that are not closed, newest first.</summary>
    Task<IReadOnlyList<OpenVisit>> OpenVisitsAsync(string channel, int most, CancellationToken cancellation);

    /// <summary>Every asset's id, site and unit, by site.</summary>
    Task<IReadOnlyList<AssetName>> AssetsAsync(CancellationToken cancellation);

    /// <summary>The events that tell of cylinders, visit by visit in their order.</summary>
    /// <param name="since">Of visits opened then or later; null for all.</param>
    /// <param name="until">Of visits opened then or before; null for all.</param>
    Task<IReadOnlyList<CylinderRow>> CylinderRowsAsync(DateTimeOffset? since, DateTimeOffset? until, CancellationToken cancellation);
}
