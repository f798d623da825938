using Assistant.Dialogue.Turns;
using Assistant.Trade.Quantities;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Scoring.Kit;

/// <summary>An invented leak at a flare nut: the search place by place, the soap, the spot, and what to do about it, typed and spoken. Most of it is chosen and not measured.</summary>
public static class LeakCall
{
    private const int MostTurns = 60;

    private static readonly (string Asked, string Typed, string Spoken)[] Answers =
    [
        ("stop equalise", "ok", "okay"), ("ambient_temperature", "75 degF", "seventy five degrees"), ("standing_pressure", "110 psig", "one hundred ten p s i"), ("stop sensitivity", "ok", "ready"),
        ("stop at-condenser", "nothing", "nothing/clear"), ("stop at-receiver", "nothing", "clear/nothing"), ("stop at-stems", "nothing", "nothing/clear"), ("stop at-flares", "it sniffs", "it beeps/it sniffs"),
        ("stop at-schrader", "nothing", "nothing/clear"), ("stop at-capillaries", "nothing", "dry/nothing"), ("stop at-drier", "nothing", "nothing/clear"), ("stop at-compressor", "nothing", "clean/nothing"),
        ("stop still-air", "ok", "done"), ("stop at-coil", "nothing", "nothing/clear"), ("stop at-distributor", "nothing", "clear/nothing"), ("stop at-valve", "nothing", "nothing/clear"),
        ("stop at-lines", "nothing", "none/nothing"), ("stop narrow", "ok", "okay"), ("stop soap", "bubbles", "it bubbles/bubbles"), ("stop spot", "leak at the flare nut", "leak at the flare nut"),
        ("stop picture", "ok", "okay"), ("stop more", "no more", "no more leaks/no more"), ("stop hazards", "yes", "yes/yeah"), ("stop part", "flare", "a flare/flare nut"),
        ("hot_work_allowed", "yes", "yes"), ("stop parts", "no parts", "no parts/nothing"), ("stop access", "good access", "good access/good"), ("stop shut-off", "no", "no/can not"),
    ];

    /// <summary>The visit where the search has been begun.</summary>
    public static async Task<EngineVisit> VisitAsync(ITurnEngine engine)
    {
        var visit = new EngineVisit(engine, UnitSystem.Us, ("refrigerant", "R448A"), ("application", "cooler"));
        await visit.SayAsync("leak search", default);
        return visit;
    }

    /// <summary>The answers typed, up to the first thing to be done about it.</summary>
    public static async Task TypeAsync(EngineVisit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        for (var i = 0; i < MostTurns; i++)
        {
            var now = await visit.NowAsync(default);
            if (Answers.FirstOrDefault(a => a.Asked == (now.AskedFact ?? "stop " + now.Walk?.Stop)) is not { Typed: { } typed })
            {
                return;
            }

            await visit.SayAsync(typed, default);
        }
    }

    /// <summary>The same by voice, WAV in and WAV out each turn.</summary>
    public static Task<SpokenCall> SpeakAsync(VoiceParts parts, EngineVisit visit, SyntheticVoice technician, double decibels, ISpeechVoice assistant) =>
        SpokenCall.HoldAsync(parts, visit, null, Answers, technician, decibels, assistant, _ => false);
}
