namespace Assistant.Records.Storage.Rows;

/// <summary>A picture without metadata; its id is the hash of its bytes.</summary>
public sealed class PictureRow
{
    public required string Id { get; init; }

    public required byte[] Jpeg { get; init; }

    /// <summary>In pixels.</summary>
    public required int Width { get; init; }

    /// <summary>In pixels.</summary>
    public required int Height { get; init; }
}
