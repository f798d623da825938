using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;

namespace Assistant.Voice.Scoring.Kit;

/// <summary>A question's fact, the words that answer it, and what they mean.</summary>
/// <param name="Value">The number meant, in <paramref name="Unit"/>; null for a choice.</param>
public sealed record SpokenAnswer(string Fact, string Words, double? Value, string Unit, string? Choice = null);

/// <summary>What the synthetic technician says. Two sets that share no phrase: one to set thresholds with, one to measure with.</summary>
public static class Phrases
{
    /// <summary>69 answers with a value and unit each, for the figures.</summary>
    public static IReadOnlyList<SpokenAnswer> ForScoring { get; } =
    [
        .. Psi("suction_pressure", ("seventeen", 17), ("twenty four p s i", 24), ("thirty", 30), ("thirty six pounds", 36), ("fourteen p s i", 14),
            ("forty two", 42), ("fifty eight pounds", 58), ("sixty", 60), ("one oh five", 105), ("seventy one p s i", 71), ("nineteen pounds", 19), ("ninety", 90)),
        .. Psi("discharge_pressure", ("one seventeen p s i", 117), ("two twenty six", 226), ("two hundred and five pounds", 205), ("one eighty", 180), ("three hundred ten p s i", 310),
            ("two sixty eight", 268), ("one ninety five pounds", 195), ("two forty", 240), ("three fifteen p s i", 315), ("one hundred fifty", 150), ("two seventy three", 273), ("one sixteen", 116)),
        .. Of("suction_pressure", "inHg vacuum", ("eight inches of vacuum", 8), ("five inches of mercury", 5)),
        .. Of("box_temperature", "degF", ("forty one degrees", 41), ("thirty eight", 38), ("thirty six point five", 36.5), ("fifty two degrees", 52), ("minus ten", -10),
            ("minus five degrees", -5), ("zero", 0), ("forty eight fahrenheit", 48), ("thirteen degrees", 13)),
        .. Of("ambient_temperature", "degF", ("ninety five degrees", 95), ("eighty two", 82), ("seventy degrees", 70), ("one hundred four degrees", 104), ("sixteen", 16), ("fifty five", 55)),
        .. Of("liquid_line_temperature", "degF", ("eighty eight", 88), ("ninety four point two degrees", 94.2), ("one oh two", 102), ("seventy six degrees", 76), ("one twelve degrees", 112)),
        .. Of("discharge_line_temperature", "degF", ("one ninety degrees", 190), ("two fifteen", 215), ("two hundred twenty degrees", 220), ("one eighty five", 185)),
        .. Of("superheat", "degF", ("eleven degrees", 11), ("twelve", 12), ("twenty seven", 27), ("six degrees", 6)),
        .. Of("differential", "degF", ("four degrees", 4), ("three", 3), ("two point five", 2.5)),
        .. Of("compressor_current", "A", ("six point eight amps", 6.8), ("eleven point four", 11.4), ("nine amps", 9), ("fourteen point two amps", 14.2)),
        .. Of("vacuum", "micron", ("five hundred microns", 500), ("three fifty", 350), ("one thousand", 1000), ("fifteen hundred microns", 1500)),
        .. Of("cylinder_weight", "lb", ("twenty three point six pounds", 23.6), ("forty seven pounds", 47), ("thirty one", 31), ("nineteen point five pounds", 19.5)),
    ];

    /// <summary>Choices, as they are said.</summary>
    public static IReadOnlyList<SpokenAnswer> ChoicesForScoring { get; } =
    [
        .. new[]
        {
            ("condenser_coil", "dirty", "dirty"), ("condenser_coil", "clean", "clean"), ("coil_ice", "no ice", "none"), ("coil_ice", "light", "light"), ("coil_ice", "blocked", "blocked"),
            ("sight_glass", "clear", "clear"), ("sight_glass", "flashing", "flashing"), ("evaporator_fans", "all", "all"), ("evaporator_fans", "some", "some"), ("evaporator_fans", "none", "none"),
            ("calling_for_cooling", "yes", "yes"), ("calling_for_cooling", "no", "no"), ("liquid_line_feel", "warm", "warm"), ("liquid_line_feel", "cold", "cold"), ("compressor", "running", "running"), ("compressor", "off", "off"),
        }.Select(c => new SpokenAnswer(c.Item1, c.Item2, null, "", c.Item3)),
    ];

    /// <summary>Other answers, for setting thresholds.</summary>
    public static IReadOnlyList<SpokenAnswer> ForCalibration { get; } =
    [
        .. Psi("suction_pressure", ("eighteen", 18), ("twenty nine pounds", 29), ("thirty three p s i", 33), ("forty", 40), ("fifteen p s i", 15), ("sixty six", 66), ("one fifteen", 115)),
        .. Psi("discharge_pressure", ("one eighty eight p s i", 188), ("two ten", 210), ("two hundred and fifty pounds", 250), ("one forty four", 144), ("three twenty", 320), ("two thirteen", 213)),
        .. Of("box_temperature", "degF", ("forty four degrees", 44), ("thirty five", 35), ("minus twelve", -12), ("fifty point five", 50.5)),
        .. Of("compressor_current", "A", ("seven point two amps", 7.2), ("twelve amps", 12)),
        .. Of("vacuum", "micron", ("eight hundred microns", 800), ("four fifty", 450)),
    ];

    /// <summary>Speech around the job that is no answer to anything asked.</summary>
    public static IReadOnlyList<string> Foreign { get; } =
    [
        "did you bring the sandwiches from the truck", "tell the manager we are moving the boxes", "the customer wants to know about lunch", "pass me the big wrench please",
        "my brother bought a new car last weekend", "it looks like rain over the mountains", "where did you park the van", "mind the forklift behind you",
        "we should call the office about the invoice", "that song has been in my head all day", "somebody left the lights on again", "can you hold the ladder steady",
        "the delivery came early this morning", "good afternoon how can i help you", "attention shoppers cleanup near the bakery", "the baseball game starts in the evening",
        "she said the paperwork was lost", "turn the radio off would you", "i think the battery is getting weak", "that door sticks in the winter",
        "please move your vehicle from the loading zone", "the milk goes on the other shelf", "have you seen my gloves anywhere", "let me look for the manual in the cab",
        "nobody told me about the meeting", "the floor is wet over there", "how is your mother doing these days", "keep the receipt for the parts",
        "they are building a new school across the street", "watch your head on that pipe",
    ];

    /// <summary>Other foreign speech, for setting thresholds.</summary>
    public static IReadOnlyList<string> ForeignForCalibration { get; } =
    [
        "could you open the gate for the driver", "the vegetables arrived yesterday afternoon", "my phone is almost out of charge", "put the cover back on when you leave",
        "the boss will be angry about this", "who ordered the coffee", "a dog was barking in the parking lot", "i forgot my jacket at home",
        "the printer in the office is jammed", "there is a sale on bread today", "we went fishing at the lake", "stack the pallets against the wall",
    ];

    /// <summary>A reply that asks for just that fact.</summary>
    public static Reply Question(string fact) => new(
        Phrase.Empty, [], [], new(fact, fact), FactCatalogue.Find(fact)?.Choices ?? [], fact, [], null, []);

    private static IEnumerable<SpokenAnswer> Psi(string fact, params (string Words, double Value)[] answers) => Of(fact, "psig", answers);

    private static IEnumerable<SpokenAnswer> Of(string fact, string unit, params (string Words, double Value)[] answers) =>
        answers.Select(a => new SpokenAnswer(fact, a.Words, a.Value, unit));
}
