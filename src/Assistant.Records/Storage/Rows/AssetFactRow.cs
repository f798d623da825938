namespace Assistant.Records.Storage.Rows;

/// <summary>One value of one detail of an asset, from when on. The newest of a name counts; the older ones are its history.</summary>
public sealed class AssetFactRow
{
    public required string AssetId { get; init; }

    /// <summary>The order in which an asset's details were recorded, from 1.</summary>
    public required int Sequence { get; init; }

    /// <summary>A fact of the catalogue, or a detail beyond it such as valve_body.</summary>
    public required string Name { get; init; }

    /// <summary>As a person would write it: "20 degF", "R449A".</summary>
    public required string Text { get; init; }

    public required DateTimeOffset At { get; init; }

    /// <summary>The visit on which it was taken; null where it came with the record.</summary>
    public string? VisitId { get; init; }

    public int? EventNumber { get; init; }
}
