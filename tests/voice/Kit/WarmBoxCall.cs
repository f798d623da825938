using Assistant.Dialogue.Turns;
using Assistant.Trade.Quantities;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Scoring.Kit;

/// <summary>An invented warm cold room in a heat wave, its condenser dirty: the same answers typed and spoken.</summary>
public static class WarmBoxCall
{
    private const int MostUtterances = 90;

    private static readonly (string Asked, string Typed, string Spoken)[] Answers =
    [
        ("stop hazards", "ok", "okay"), ("refrigerant", "R449A", "r four four nine a"), ("application", "cooler", "cooler"),
        ("box_temperature", "48 degF", "forty eight degrees"), ("box_temperature_check", "48.5 degF", "forty eight point five"),
        ("setpoint", "38 degF", "thirty eight"), ("differential", "4 degF", "four degrees"), ("calling_for_cooling", "yes", "yes"),
        ("evaporator_fans", "all", "all"), ("door_condition", "good", "good"), ("product_temperature", "45 degF", "forty five degrees"), ("coil_ice", "none", "no ice"),
        ("solenoid_energised", "yes", "yes"), ("liquid_line_feel", "warm", "warm"), ("metering_device", "txv", "t x v"), ("stop at-the-unit", "ok", "im there"),
        ("ambient_temperature", "88 degF", "eighty eight degrees"), ("compressor", "running", "running"), ("condenser_fans", "all", "all"),
        ("condenser_coil", "dirty", "dirty"), ("sight_glass", "clear", "clear"), ("discharge_pressure", "348 psig", "three forty eight p s i"),
        ("suction_pressure", "52 psig", "fifty two pounds"), ("liquid_line_temperature", "122 degF", "one twenty two degrees"),
        ("suction_line_temperature_at_compressor", "61 degF", "sixty one degrees"), ("stop act", "later", "not today"), ("stop pull-down", "ok", "done"), ("stop close-out", "ok", "all done/done"),
    ];

    public static EngineVisit Visit(ITurnEngine engine) => new(engine, UnitSystem.Us, ("design_condenser_split", "22 degF"));

    /// <summary>The call typed, each question answered as it comes.</summary>
    /// <param name="until">The fact that is asked for where it stops; null goes to the end.</param>
    public static async Task TypeAsync(EngineVisit visit, string? until = null)
    {
        ArgumentNullException.ThrowIfNull(visit);
        for (var i = 0; i < MostUtterances && visit.State.Outcome is null; i++)
        {
            var now = await visit.NowAsync(default);
            if (until is not null && now.AskedFact == until)
            {
                return;
            }

            await visit.SayAsync(Of(now.AskedFact ?? "stop " + now.Walk?.Stop)?.Typed ?? "skip", default);
        }
    }

    /// <summary>The call by voice, WAV in and WAV out each turn.</summary>
    public static Task<SpokenCall> SpeakAsync(VoiceParts parts, EngineVisit visit, SyntheticVoice technician, double decibels, ISpeechVoice assistant)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return SpokenCall.HoldAsync(parts, visit, visit.Opening, Answers, technician, decibels, assistant, _ => visit.State.Outcome is not null);
    }

    private static (string Asked, string Typed, string Spoken)? Of(string asked) => Answers.FirstOrDefault(a => a.Asked == asked) is { Asked: { } } found ? found : null;
}
