using System.Collections.Immutable;
using Assistant.Dialogue.Visits;

namespace Assistant.Records.Tests.Support;

/// <summary>Logs of invented visits, a fact at a minute.</summary>
internal static class PlottedEvents
{
    /// <summary>A log that begins in these units and takes each fact at its minute.</summary>
    public static IReadOnlyList<VisitEvent> Of(string units, params IEnumerable<(int Minute, string Fact, object Value)> facts) =>
    [
        new VisitOpened("Invented Dairy", null, units, ImmutableDictionary<string, string>.Empty) { At = Invented.Morning, By = "Robin", Number = 1 },
        .. facts.Select((f, i) => Taken(i + 2, f.Minute, f.Fact, f.Value)),
    ];

    /// <summary>A flooded condenser: R-134a, 90 °F held at 104.3 psig, 30 °F split, 0.2 ft3, 0 °F today, -20 °F on the coldest day.</summary>
    public static IEnumerable<(int Minute, string Fact, object Value)> Flooded { get; } =
    [
        (0, "refrigerant", "R134a"), (0, "head_pressure_control", "valve"), (0, "head_pressure_control_setting", (90.0, "degF")),
        (0, "design_condenser_split", (30.0, "degF")), (0, "condenser_volume", (0.2, "ft3")), (0, "coldest_design_ambient", (-20.0, "degF")),
        (1, "ambient_temperature", (0.0, "degF")), (2, "discharge_pressure", (85.0, "psig")),
    ];

    private static FactTaken Taken(int number, int minute, string fact, object value) => value switch
    {
        string word => new(fact, null, null, word, "unit", null) { At = Invented.Morning.AddMinutes(minute), By = "Robin", Number = number },
        (double amount, string unit) => new(fact, amount, unit, null, "unit", null) { At = Invented.Morning.AddMinutes(minute), By = "Robin", Number = number },
        _ => throw new ArgumentException("a word, or a number with its unit", nameof(value)),
    };
}
