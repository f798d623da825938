namespace Assistant.Trade.Refrigerants;

/// <summary>ASHRAE Standard 34 safety groups that occur among the refrigerants of the library.</summary>
public enum SafetyClass
{
    A1,
    A2L,
    A3,
    B2L,
}
