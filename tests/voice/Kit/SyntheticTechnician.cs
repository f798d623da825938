using Assistant.Voice.Dialogues;

namespace Assistant.Voice.Scoring.Kit;

/// <summary>
/// What a technician says next, by what the assistant waits for: the answer, "correct" to the value meant and "wrong" to any other,
/// the digits where they are asked for. Knows what was meant, and hears the read-back rightly.
/// </summary>
/// <param name="answers">What is said to each question, by fact; and by "stop NAME" at a stop that asks for no fact.</param>
/// <param name="meant">What each answer means, as it stands in the record: "24 bar", "dirty".</param>
public sealed class SyntheticTechnician(IReadOnlyDictionary<string, string> answers, IReadOnlyDictionary<string, string> meant)
{
    private static readonly string[] Digits = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

    private int turn;

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
            VoicePhase.Digits => Spelled(Meant(state).Split(' ')[0]) + " go",
            _ => Answer(state),
        };
    }

    private string? Answer(VoiceState state) => state.Asked.AskedFact is { } fact
        ? answers.GetValueOrDefault(fact, Skipped)
        : answers.GetValueOrDefault("stop " + state.Asked.Walk?.Stop);

    private string Skipped => Turned("skip", "skip it", "i dont know");

    // The words are changed about, as people do.
    private string Turned(params string[] words) => words[turn % words.Length];

    private bool IsMeant(VoiceState state, Pending pending) => pending.Text == Meant(state);

    private string Meant(VoiceState state) => state.Asked.AskedFact is { } fact ? meant.GetValueOrDefault(fact, "skip")
        : answers.GetValueOrDefault("stop " + state.Asked.Walk?.Stop, "ok");

    private static string Spelled(string number) => string.Join(' ', number.Select(c => c switch { '-' => "minus", '.' => "point", _ => Digits[c - '0'] }));
}
