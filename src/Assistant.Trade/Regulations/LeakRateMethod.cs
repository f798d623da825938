namespace Assistant.Trade.Regulations;

/// <summary>The two ways to reckon a leak rate (40 CFR 82.152); one for all appliances of a facility.</summary>
public enum LeakRateMethod
{
    Annualising,
    Rolling,
}
