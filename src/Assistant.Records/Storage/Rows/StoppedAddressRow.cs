namespace Assistant.Records.Storage.Rows;

/// <summary>An address that asked for no more messages. Kept under the installation's key alone, so that it can be honoured even for one who was erased.</summary>
public sealed class StoppedAddressRow
{
    public required string AddressDigest { get; init; }

    public required DateTimeOffset At { get; init; }
}
