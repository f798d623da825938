using System.Collections.Immutable;

namespace Assistant.Records.Assets;

/// <summary>One piece of equipment as it is known now.</summary>
/// <param name="Unit">What people call it.</param>
/// <param name="Details">Facts of the catalogue and details beyond it (valve_body, orifice), as a person would write them.</param>
public sealed record Asset(string Id, string Site, string Unit, ImmutableSortedDictionary<string, string> Details)
{
    /// <summary>The <see cref="Unit"/> of equipment that nobody has named.</summary>
    public const string Unnamed = "unit";
}
