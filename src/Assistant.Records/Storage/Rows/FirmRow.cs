namespace Assistant.Records.Storage.Rows;

/// <summary>A firm whose people use these records. Where there is none, nobody signs in.</summary>
public sealed class FirmRow
{
    public required string Id { get; init; }

    public required string Name { get; set; }
}
