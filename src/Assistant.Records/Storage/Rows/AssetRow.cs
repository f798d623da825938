namespace Assistant.Records.Storage.Rows;

/// <summary>One piece of equipment at one site. What is known of it stands in <see cref="AssetFactRow"/>.</summary>
public sealed class AssetRow
{
    public required string Id { get; init; }

    public required string Site { get; set; }

    /// <summary>What people call it: "walk-in cooler, rear".</summary>
    public required string Unit { get; set; }
}
