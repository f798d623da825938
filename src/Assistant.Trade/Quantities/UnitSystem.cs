namespace Assistant.Trade.Quantities;

/// <summary>Which units a bare number means and an answer is given in. A unit that is said always beats it.</summary>
public enum UnitSystem
{
    Us,
    Metric,
}
