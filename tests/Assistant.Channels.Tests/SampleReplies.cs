using Assistant.Dialogue.Replies;

namespace Assistant.Channels.Tests;

/// <summary>Replies as the dialogue gives them, invented for these tests.</summary>
internal static class SampleReplies
{
    public static Reply Question { get; } = new(
        new("9 °C taken.", "9."),
        [],
        [],
        new("Is the coil face clean or dirty?", "Coil face?"),
        ["clean", "dirty"],
        "condenser_coil",
        [],
        new("warm-box", "condenser-coil", "unit"),
        []);

    public static Reply VerdictWithCaution { get; } = new(
        new("VERDICT, established: dirty condenser.", "Dirty condenser."),
        [new("Split 26 K against 12 K.", "Split 26.")],
        [new("lock-out", new("CAUTION: lock out before hands go near the fan.", "Lock out first."))],
        new("Clean it, then tell me the head again.", "Clean it, head again."),
        [],
        "discharge_pressure",
        ["bar", "kPa"],
        new("warm-box", "head-again", "unit"),
        [new("condenser-airflow", "established")]);
}
