namespace Assistant.Trade.Facts;

/// <summary>Where a fact is taken. A change between <see cref="Room"/> and <see cref="Unit"/> is the long cold walk.</summary>
public enum Place
{
    /// <summary>Known before the visit: the office, the record, the nameplate.</summary>
    Record,

    /// <summary>At the cold room, the contract's "box".</summary>
    Room,

    /// <summary>At the condensing unit.</summary>
    Unit,

    /// <summary>At the cylinder and its scale.</summary>
    Scale,

    /// <summary>Anywhere on the site.</summary>
    Anywhere,
}
