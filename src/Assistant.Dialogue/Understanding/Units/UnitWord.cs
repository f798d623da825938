using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Understanding.Units;

/// <summary>One thing a unit's word can mean.</summary>
/// <param name="Unit">Null for "degrees" alone: the site's own scale.</param>
/// <param name="Everyday">A word that is mostly something else, such as "in" and "a": a unit only where its dimension is what was asked.</param>
internal sealed record UnitWord(UnitOfMeasure? Unit, bool Everyday = false);
