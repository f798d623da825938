using Assistant.Trade.Ledgers;
using Assistant.Trade.Rules;
using System.Collections.Immutable;

namespace Assistant.Records.Cylinders;

/// <summary>One use of a cylinder as it is told: the scale before and after.</summary>
/// <param name="EntryId">Identifies the use; told twice it counts once.</param>
/// <param name="Tag">The tag on the cylinder.</param>
/// <param name="Refrigerant">The refrigerant that moved.</param>
/// <param name="Tare">The empty weight stamped on it.</param>
/// <param name="WaterCapacity">The mass of water it would hold, where it is known: without it a fill can not be judged.</param>
public sealed record CylinderUse(
    string EntryId, string Tag, CylinderKind Kind, EntryPurpose Purpose, string Refrigerant, Grams Tare, Grams GrossBefore, Grams GrossAfter, Grams? WaterCapacity, string Person, DateTimeOffset At);

/// <summary>What became of a use.</summary>
/// <param name="Refused">Why it was not recorded; null where it was.</param>
/// <param name="Remarks">What the cylinder's balance says now: weights that do not follow, refrigerants that met, a fill that could not be judged.</param>
/// <param name="WasThere">True where the same use was on record already: nothing was added.</param>
public sealed record CylinderUseResult(Reason? Refused, ImmutableArray<Reason> Remarks, bool WasThere = false)
{
    public bool IsRecorded => Refused is null;
}
