using Assistant.Trade.Quantities;

namespace Assistant.Trade.Rules.Thresholds;

/// <summary>The room and its control.</summary>
internal static class RoomLimits
{
    /// <summary>A flooded coil is a good coil: it holds the room within 9 degF of its setpoint. Common practice.</summary>
    public static TemperatureDifference StillPulling { get; } = new(5);

    /// <summary>A sound plant keeps it within 6.3 degF, a differential and a delivery counted: common practice.</summary>
    public static TemperatureDifference SoundOver { get; } = new(3.5);
    public static TemperatureDifference SoundScatter { get; } = new(0.8);

    /// <summary>A fault that takes the cooling away lets the room become as warm as the hours since allow; 22 degF over it is rather that nothing cools at all. Common practice.</summary>
    public static TemperatureDifference AnyWarmth { get; } = new(12);
    public static TemperatureDifference WarmthScatter { get; } = new(3);

    /// <summary>A load the plant can not carry shows in the room: 4.5 degF over. Common practice.</summary>
    public static TemperatureDifference LoadedOver { get; } = new(2.5);

    /// <summary>What is stored, over the air around it by 7 degF: it came in warm, since goods in a failing room lag behind its air. Common practice.</summary>
    public static TemperatureDifference CameInWarm { get; } = new(4);

    /// <summary>The room is at its setpoint or under it: a satisfied control rightly rests.</summary>
    public static TemperatureDifference Satisfied { get; } = new(0);
    public static TemperatureDifference SatisfiedScatter { get; } = new(0.3);

    /// <summary>A room that has begun to warm: 2.7 degF over its setpoint. Common practice.</summary>
    public static TemperatureDifference Warming { get; } = new(1.5);

    /// <summary>Without cooling the room is at its setpoint or over it, less the instruments.</summary>
    public static TemperatureDifference NotUnder { get; } = new(-1);

    /// <summary>A thermometer at fault may show any room.</summary>
    public static TemperatureDifference AnyRoom { get; } = new(-20);

    /// <summary>How far rooms differ from place to place: 1.8 degF. Common practice.</summary>
    public static TemperatureDifference RoomScatter { get; } = new(1);

    /// <summary>A control obeys: the room is not over its calling point by 1.8 degF.</summary>
    public static TemperatureDifference Obeyed { get; } = new(1);
    public static TemperatureDifference ObeyedScatter { get; } = new(0.7);

    /// <summary>A control that does not call may have failed just now: the room over its calling point is looked for, and hardly weighs.</summary>
    public static TemperatureDifference OverCall { get; } = new(0);
    public static TemperatureDifference OverCallScatter { get; } = new(20);

    /// <summary>It is proven only where the control's own sensor could not excuse it, which may be off by 1 degF like any other thermometer: common practice.</summary>
    public static TemperatureDifference ClearlyOverCall { get; } = new(1 / 1.8);

    /// <summary>Setpoint and differential let the room become warmer than suits what is stored: by 2.5 degF a fault (5 degC / 41 degF in a cooler: FDA Food
    /// Code 3-501.16; -15 degC in a freezer: common practice), by 2.2 degF still use.</summary>
    public static TemperatureDifference WrongSetting { get; } = new(1.4);
    public static TemperatureDifference WrongSettingScatter { get; } = new(0.1);
    public static TemperatureDifference UsableSetting { get; } = new(1.2);
    public static TemperatureDifference UsableSettingScatter { get; } = new(0.4);

    /// <summary>Two thermometers in the same air: over 2.3 degF apart is settled before anything else (common practice: 2 degF), 4 degF apart one of them is wrong.</summary>
    public static TemperatureDifference ThermometersAgree { get; } = new(1.3);
    public static TemperatureDifference ThermometersApart { get; } = new(2.2);
    public static TemperatureDifference ThermometerScatter { get; } = new(0.4);
}
