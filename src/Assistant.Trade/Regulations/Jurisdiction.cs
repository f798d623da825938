namespace Assistant.Trade.Regulations;

/// <summary>Whose law holds at a site.</summary>
public enum Jurisdiction
{
    UnitedStates,
    EuropeanUnion,
}
