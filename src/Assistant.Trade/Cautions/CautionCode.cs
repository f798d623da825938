namespace Assistant.Trade.Cautions;

/// <summary>The cautions that can be given; <see cref="Codes.Of(CautionCode)"/> spells them in kebab-case.</summary>
public enum CautionCode
{
    LockOut,
    Electrical,
    MovingFan,
    Ladder,
    RoofWeather,
    LoneWork,
    ColdStress,
    HotSurface,
    LiquidRefrigerant,
    TrappedLiquid,
    OxygenDisplacement,
    FlammableRefrigerant,
    HighPressureCo2,
    Ammonia,
    Nitrogen,
    HotWork,
    BurntRefrigerant,
    CylinderHeating,
    OverfullCylinder,
    NoVenting,
    IceRemoval,
    LiquidToSuction,
    TrappedInside,
    FoodSafety,
    Emergency,
}
