namespace Assistant.Voice.Scoring.Kit;

/// <summary>
/// Answers written after every limit was set, and voices that no limit was set with: the clean check. Whoever moves a limit because of
/// them has used them up, and writes others.
/// </summary>
public static class FreshPhrases
{
    public static IReadOnlyList<SyntheticVoice> Voices { get; } = [new("festival", "ked_diphone"), .. SyntheticVoice.ForScoring];

    public static IReadOnlyList<SyntheticVoice> Hard { get; } = [new("espeak-ng", "en-us+m7"), new("espeak-ng", "en-us+f2")];

    public static IReadOnlyList<SpokenAnswer> Numbers { get; } =
    [
        .. Of("suction_pressure", "psig", ("twenty nine p s i", 29), ("one oh nine p s i", 109), ("one oh three", 103), ("one oh two p s i", 102), ("fourteen pounds", 14),
            ("sixty eight", 68), ("seventy five p s i", 75), ("one oh eight pounds", 108), ("one hundred and thirteen pounds", 113), ("seventy three p s i", 73), ("forty four", 44),
            ("seventy three", 73)),
        .. Of("discharge_pressure", "psig", ("two forty six p s i", 246), ("three fifty nine p s i", 359), ("one hundred thirty pounds", 130), ("three thirty seven p s i", 337),
            ("two seventy", 270), ("three eighty two", 382), ("two sixty one pounds", 261), ("one sixty one pounds", 161), ("one thirty one p s i", 131),
            ("three hundred and ninety five", 395)),
        .. Of("suction_pressure", "inHg vacuum", ("ten inches of vacuum", 10), ("fourteen inches of mercury", 14)),
        .. Of("box_temperature", "degF", ("four point two fahrenheit", 4.2), ("fifty eight fahrenheit", 58), ("fifty seven point three fahrenheit", 57.3), ("two", 2),
            ("twenty four point five degrees", 24.5), ("fifty three point nine degrees", 53.9), ("seven point nine", 7.9)),
        .. Of("ambient_temperature", "degF", ("seventy one", 71), ("seventy", 70), ("fifty", 50), ("sixty eight degrees", 68), ("one oh five degrees", 105)),
        .. Of("liquid_line_temperature", "degF", ("one twenty four point eight degrees", 124.8), ("eighty four point six", 84.6), ("one hundred and fifteen point three degrees", 115.3),
            ("sixty eight point eight", 68.8)),
        .. Of("discharge_line_temperature", "degF", ("one eighty eight", 188), ("one fifty eight degrees", 158), ("one fifty three", 153)),
        .. Of("superheat", "degF", ("five", 5), ("twenty nine", 29), ("twenty seven degrees", 27)),
        .. Of("subcooling", "degF", ("six", 6), ("nine degrees", 9), ("twenty three degrees", 23)),
        .. Of("compressor_current", "A", ("twelve point one", 12.1), ("fourteen amps", 14), ("fourteen point one amps", 14.1), ("ten point nine", 10.9)),
        .. Of("vacuum", "micron", ("thirty six hundred", 3600), ("nine hundred microns", 900), ("seven hundred microns", 700)),
        .. Of("cylinder_weight", "lb", ("thirty six", 36), ("thirty pounds", 30), ("fifty four pounds", 54)),
    ];

    public static IReadOnlyList<SpokenAnswer> Choices { get; } =
    [
        .. new[]
        {
            ("sight_glass_moisture", "dry", "dry"), ("sight_glass_moisture", "wet", "wet"), ("oil_level", "low", "low"), ("oil_level", "normal", "normal"), ("oil_level", "high", "high"),
            ("saturation_basis", "dew", "dew"), ("saturation_basis", "bubble", "bubble"), ("metering_device", "e e v", "eev"), ("condenser_coil", "snowed", "snowed"),
            ("head_pressure_control", "valve", "valve"), ("wrong_thermometer", "second", "second"), ("wrong_thermometer", "display", "display"),
        }.Select(c => new SpokenAnswer(c.Item1, c.Item2, null, "", c.Item3)),
    ];

    private static IEnumerable<SpokenAnswer> Of(string fact, string unit, params (string Words, double Value)[] answers) =>
        answers.Select(a => new SpokenAnswer(fact, a.Words, a.Value, unit));
}
