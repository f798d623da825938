namespace Assistant.Records.Storage.Rows;

/// <summary>A code that did not fit. Who tried it is a stranger, so only the address under the installation's key is kept.</summary>
public sealed class EnrolmentTryRow
{
    public long Id { get; init; }

    public required string AddressDigest { get; init; }

    public required DateTimeOffset At { get; init; }
}
