namespace Assistant.EndToEnd.Tests.Page;

/// <summary>What the technician of the invented creamery finds: by fact, the word to press or the number to type (metric).</summary>
internal static class Answers
{
    private static readonly Dictionary<string, string> ByFact = new()
    {
        ["box_temperature"] = "9",
        ["box_temperature_check"] = "9.2",
        ["setpoint"] = "4",
        ["differential"] = "2",
        ["calling_for_cooling"] = "yes",
        ["evaporator_fans"] = "all",
        ["door_condition"] = "good",
        ["coil_ice"] = "none",
        ["product_temperature"] = "7",
        ["solenoid_energised"] = "yes",
        ["liquid_line_feel"] = "warm",
        ["metering_device"] = "txv",
        ["ambient_temperature"] = "31",
        ["compressor"] = "running",
        ["condenser_fans"] = "all",
        ["condenser_coil"] = "dirty",
        ["sight_glass"] = "clear",
        ["suction_pressure"] = "4.4",
        ["discharge_pressure"] = "24",
        ["high_side_standing_pressure"] = "skip",
        ["liquid_line_temperature"] = "50",
        ["suction_line_temperature_at_bulb"] = "7.5",
        ["suction_line_temperature_at_compressor"] = "12",
        ["discharge_line_temperature"] = "85",
        ["evaporator_air_in"] = "9",
        ["evaporator_air_out"] = "5",
    };

    /// <summary>The answer to the fact asked for; a step that asks for no fact is confirmed.</summary>
    public static string To(string? fact) => string.IsNullOrEmpty(fact) ? "ok" : ByFact[fact];
}
