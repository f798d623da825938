using Assistant.Dialogue.Visits;

namespace Assistant.Records.Storage.Rows;

/// <summary>Whom a channel's address belongs to: "sms" and a number, "team" and an account.</summary>
public sealed class ChannelIdentityRow
{
    public required string Channel { get; init; }

    [Personal]
    public required string Address { get; init; }

    public required string PersonId { get; set; }

    public required DateTimeOffset BoundAt { get; set; }

    /// <summary>Since when it speaks for nobody (a lost phone), or null.</summary>
    public DateTimeOffset? RevokedAt { get; set; }
}
