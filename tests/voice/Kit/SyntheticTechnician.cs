using Assistant.Voice.Dialogues;

namespace Assistant.Voice.Scoring.Kit;

/// <summary>
/// What a technician says next, by what the assistant waits for: the answer, "correct" to the value meant and "wrong" to any other,
/// the digits where they are asked for. Knows what was meant, and hears the read-back rightly.
/// </summary>
/// <param name="answers">
/// What is said to each question, by fact; and by "stop NAME" at a stop that asks for no fact. A second word is one the question itself
/// says, and said where the first led nowhere.
/// </param>
/// <param name="meant">What each answer means, as it stands in the record: "24 bar", "dirty", at a stop "done".</param>
public sealed class SyntheticTechnician(IReadOnlyDictionary<string, string[]> answers, IReadOnlyDictionary<string, string> meant)
{
    private static readonly string[] Digits = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

    private int turn;
    private int tries;
    private string? said;
    private string? at;

    /// <summary>The words said next, or null where there is nothing more to say.</summary>
    public string? Next(VoiceState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        turn++;
        return state.Phase switch
        {
            VoicePhase.WakeWord => "coldwalk",
            VoicePhase.Resuming or VoicePhase.GoingOn => "continue",
            VoicePhase.Confirmation => IsMeant(state, state.Pending!) ? Turned("correct", "yes", "thats right") : Turned("wrong", "no", "thats wrong"),
            VoicePhase.Pair or VoicePhase.Digits when Meant(state) is "skip" => Skipped,
            VoicePhase.Pair => Spelled(Meant(state).Split(' ')[0]),
            VoicePhase.Digits when state.Digits.Length > 0 => state.Digits == Meant(state).Split(' ')[0] ? "go ahead" : "clear",
            VoicePhase.Digits => Spelled(Meant(state).Split(' ')[0]) + " go ahead",
            _ => Answer(state),
        };
    }

    // Told which words are heard well here, a person says one of those, and not the same word over again.
    private string? Answer(VoiceState state)
    {
        var question = state.Asked.AskedFact ?? "stop " + state.Asked.Walk?.Stop;
        (tries, at) = (question == at ? tries + 1 : 0, question);
        string[] offered = [.. state.Offered.Where(o => o.Text == Meant(state) && o.Words != said).Select(o => o.Words)];
        return said = offered.Length > 0 ? Turned(offered)
            : answers.TryGetValue(question, out var own) ? own[tries % own.Length]
            : state.Asked.AskedFact is null ? null : Skipped;
    }

    private string Skipped => Turned("skip", "skip it", "i dont know");

    // The words are changed about, as people do.
    private string Turned(params string[] words) => words[turn % words.Length];

    private bool IsMeant(VoiceState state, Pending pending) => pending.Text == Meant(state);

    private string Meant(VoiceState state) => state.Asked.AskedFact is { } fact ? meant.GetValueOrDefault(fact, "skip")
        : meant.GetValueOrDefault("stop " + state.Asked.Walk?.Stop, "ok");

    private static string Spelled(string number) => string.Join(' ', number.Select(c => c switch { '-' => "minus", '.' => "point", _ => Digits[c - '0'] }));
}
