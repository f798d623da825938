using Assistant.Trade;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Tests.CaseRuns;

/// <summary>The bars of the computed cases: an invented physics model, not measured plants.</summary>
public class CaseRunTests
{
    // The faults that only readings give away.
    private static readonly HashSet<string> ReadingsOnly =
    [
        "undercharge", "overcharge", "noncondensables", "head-pressure-control-low", "head-pressure-control-high", "liquid-line-restriction",
        "expansion-valve-starving", "expansion-valve-overfeeding", "compressor-inefficient", "no-fault",
    ];

    private static readonly IReadOnlyList<(FaultCase Case, Assessment Assessment)> Run = [.. CaseFile.Cases.Select(c => (c, Assessor.Assess(c.Facts)))];

    [Fact]
    public void Every_text_of_the_cases_is_read() => Assert.Empty(CaseFile.Cases.SelectMany(c => c.Unread.Select(u => $"{c.Id} {u}")));

    [Fact]
    public void The_first_fault_is_right_in_95_of_100_cases() => Assert.InRange(Share(Run, r => First(r.Assessment) == r.Case.Truth), 0.95, 1);

    [Fact]
    public void The_first_fault_is_right_in_92_of_100_where_only_readings_tell() =>
        Assert.InRange(Share([.. Run.Where(r => ReadingsOnly.Contains(r.Case.Truth))], r => First(r.Assessment) == r.Case.Truth), 0.92, 1);

    [Fact]
    public void The_right_fault_is_among_the_first_three_in_99_of_100() =>
        Assert.InRange(Share(Run, r => Open(r.Assessment).Take(3).Contains(r.Case.Truth)), 0.99, 1);

    [Fact]
    public void No_established_verdict_is_wrong() =>
        Assert.Empty(Run.SelectMany(r => r.Assessment.Findings
            .Where(f => f.Standing == Standing.Established && Codes.Of(f.Code) != r.Case.Truth)
            .Select(f => $"{r.Case.Id} {Codes.Of(f.Code)}")));

    [Fact]
    public void At_least_40_of_100_cases_come_to_an_established_verdict() =>
        Assert.InRange(Share(Run, r => r.Assessment.Findings[0].Standing == Standing.Established), 0.40, 1);

    [Fact]
    public void No_reading_of_a_sound_set_is_rejected() =>
        Assert.Empty(Run.SelectMany(r => r.Assessment.Rejected.Select(x => $"{r.Case.Id} {x.Value.Fact.Name}")));

    private static IEnumerable<string> Open(Assessment assessment) =>
        assessment.Findings.Where(f => f.Standing != Standing.RuledOut).Select(f => Codes.Of(f.Code));

    private static string First(Assessment assessment) => Open(assessment).First();

    private static double Share<T>(IReadOnlyList<T> all, Func<T, bool> holds) => all.Count(holds) / (double)all.Count;
}
