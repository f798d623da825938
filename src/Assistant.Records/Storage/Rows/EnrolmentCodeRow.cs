namespace Assistant.Records.Storage.Rows;

/// <summary>A code that binds one phone to a person, once. The code itself is not kept; the row goes when it is used.</summary>
public sealed class EnrolmentCodeRow
{
    /// <summary>The code under the installation's key.</summary>
    public required string Digest { get; init; }

    public required string PersonId { get; init; }

    public required DateTimeOffset Expires { get; init; }
}
