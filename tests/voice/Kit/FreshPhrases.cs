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
        .. Of("suction_pressure", "psig", ("twenty one", 21), ("twenty seven p s i", 27), ("forty eight pounds", 48), ("sixty two", 62), ("eleven p s i", 11), ("fifty five p s i", 55),
            ("ninety six", 96), ("one twenty one pounds", 121), ("thirty nine", 39), ("sixteen p s i", 16), ("eighty pounds", 80)),
        .. Of("discharge_pressure", "psig", ("one sixty seven", 167), ("two hundred thirty one p s i", 231), ("two ninety four", 294), ("three thirty six pounds", 336), ("four oh two", 402),
            ("one seventy p s i", 170), ("two fifty nine", 259), ("one hundred eighty four", 184), ("three eighteen", 318), ("two fourteen p s i", 214)),
        .. Of("suction_pressure", "inHg vacuum", ("twelve inches of vacuum", 12), ("three inches of mercury", 3)),
        .. Of("box_temperature", "degF", ("thirty four degrees", 34), ("twenty nine point five", 29.5), ("minus eighteen", -18), ("minus two degrees", -2), ("fifty seven", 57),
            ("forty three fahrenheit", 43), ("eight degrees", 8)),
        .. Of("ambient_temperature", "degF", ("ninety one", 91), ("seventy eight degrees", 78), ("one hundred and one", 101), ("one oh nine degrees", 109), ("sixty three", 63)),
        .. Of("liquid_line_temperature", "degF", ("ninety seven", 97), ("one oh five degrees", 105), ("eighty three point six", 83.6), ("one eighteen", 118)),
        .. Of("discharge_line_temperature", "degF", ("one seventy four degrees", 174), ("two oh eight", 208), ("two thirty one", 231)),
        .. Of("superheat", "degF", ("nine degrees", 9), ("fourteen", 14), ("twenty three degrees", 23)),
        .. Of("subcooling", "degF", ("eight", 8), ("thirteen degrees", 13), ("sixteen", 16)),
        .. Of("compressor_current", "A", ("five point two amps", 5.2), ("twelve point seven", 12.7), ("twenty one amps", 21), ("eight point five", 8.5)),
        .. Of("vacuum", "micron", ("seven hundred microns", 700), ("two fifty", 250), ("twelve hundred microns", 1200)),
        .. Of("cylinder_weight", "lb", ("twenty six point two pounds", 26.2), ("thirty nine pounds", 39), ("fifty one", 51)),
    ];

    public static IReadOnlyList<SpokenAnswer> Choices { get; } =
    [
        .. new[]
        {
            ("door_condition", "good", "good"), ("door_condition", "leaking", "leaking"), ("application", "freezer", "freezer"), ("application", "cooler", "cooler"),
            ("metering_device", "fixed", "fixed"), ("metering_device", "t x v", "txv"), ("condenser_fans", "cycling", "cycling"), ("condenser_fans", "none", "none"),
            ("solenoid_energised", "yes", "yes"), ("solenoid_energised", "no", "no"), ("liquid_line_feel", "hot", "hot"), ("liquid_line_feel", "cool", "cool"),
            ("sight_glass", "empty", "empty"), ("compressor", "running", "running"),
        }.Select(c => new SpokenAnswer(c.Item1, c.Item2, null, "", c.Item3)),
    ];

    private static IEnumerable<SpokenAnswer> Of(string fact, string unit, params (string Words, double Value)[] answers) =>
        answers.Select(a => new SpokenAnswer(fact, a.Words, a.Value, unit));
}
