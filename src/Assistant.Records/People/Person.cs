namespace Assistant.Records.People;

/// <summary>A person of a firm.</summary>
/// <param name="Name">What the log calls them by.</param>
/// <param name="Roles">What they may be on a visit.</param>
/// <param name="IsRevoked">True where they may neither join nor speak until they are given a new code.</param>
public sealed record Person(string Id, string FirmId, string Name, PersonRoles Roles, bool IsRevoked);

/// <summary>A firm.</summary>
public sealed record Firm(string Id, string Name);

/// <summary>A person with the phones and accounts that speak for them.</summary>
public sealed record PersonEntry(Person Person, IReadOnlyList<ChannelIdentity> Identities, DateTimeOffset? CodeExpires);

/// <summary>A channel's address that is bound to a person.</summary>
/// <param name="RevokedAt">Since when it speaks for nobody, or null.</param>
public sealed record ChannelIdentity(string Channel, string Address, DateTimeOffset BoundAt, DateTimeOffset? RevokedAt);
