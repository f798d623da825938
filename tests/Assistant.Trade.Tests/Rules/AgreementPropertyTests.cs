using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;
using CsCheck;

namespace Assistant.Trade.Tests.Rules;

/// <summary>
/// One more fact agrees with the leading fault when it is a reason for it, nothing more speaks against it, and the fact is a reason for no
/// other fault. (A sign that two faults share may well lower a standing: it brings the second one in.) What agrees never lowers its standing.
/// </summary>
public class AgreementPropertyTests
{
    // Any part of a plain call, and one fact of the same call that was not in it.
    private static readonly Gen<(FactSet Known, FactValue More)> PartsOfACall =
        from fault in Gen.OneOf(PlainCases.Changes.Keys.ToArray())
        from picks in Gen.Int[0, 99].Array[40]
        from last in Gen.Int[0, 39]
        let call = PlainCases.With(PlainCases.Changes[fault]).Values.ToArray()
        let more = call[last % call.Length]
        select (FactSet.Of(call.Where((value, i) => value != more && picks[i] < 60)), more);

    [Fact]
    public void A_fact_that_agrees_never_lowers_the_standing_of_the_leading_fault()
    {
        var agreed = 0;
        PartsOfACall.Sample(
            call =>
            {
                var before = Assessor.Assess(call.Known);
                var after = Assessor.Assess(call.Known.With(call.More));
                var leader = before.Findings[0];
                if (!Agrees(leader, before, after))
                {
                    return true;
                }

                Interlocked.Increment(ref agreed);
                return after.Findings.Single(f => f.Code == leader.Code).Standing <= leader.Standing;
            },
            iter: 6000,
            print: call => $"{string.Join("; ", call.Known.Values)} + {call.More}");

        Assert.True(agreed > 50, $"only {agreed} of the facts agreed");
    }

    // A set that contradicts itself is looked at in other units, and each system has others: only sets that hold together are compared.
    [Fact]
    public void The_other_system_of_units_changes_neither_the_faults_nor_their_standings() =>
        PartsOfACall.Sample(
            call => !Assessor.Assess(call.Known).Rejected.IsEmpty || Told(call.Known.Values.Select(InMetric)) == Told(call.Known.Values.Select(InUs)),
            iter: 2000,
            print: call => $"{string.Join("; ", call.Known.Values)}\n{Told(call.Known.Values.Select(InMetric))}\n{Told(call.Known.Values.Select(InUs))}");

    private static bool Agrees(Finding leader, Assessment before, Assessment after)
    {
        if (leader.Code == FaultCode.NotEnoughEvidence || !after.Rejected.IsEmpty || after.Findings.FirstOrDefault(f => f.Code == leader.Code) is not { } now)
        {
            return false;
        }

        return now.Because.Length > leader.Because.Length && now.Against.Length <= leader.Against.Length
            && after.Findings.Where(f => f.Code != leader.Code).All(f => f.Because.Length <= ReasonsFor(before, f.Code));
    }

    private static int ReasonsFor(Assessment assessment, FaultCode fault) => assessment.Findings.FirstOrDefault(f => f.Code == fault)?.Because.Length ?? 0;

    private static string Told(IEnumerable<FactValue> values) => string.Join(" ", Assessor.Assess(FactSet.Of(values)).Findings.Select(f => $"{f.Code}:{f.Standing}"));

    private static FactValue InMetric(FactValue value) => In(value, UnitOfMeasure.Bar, UnitOfMeasure.Celsius, UnitOfMeasure.KelvinDifference);

    private static FactValue InUs(FactValue value) => In(value, UnitOfMeasure.Psig, UnitOfMeasure.Fahrenheit, UnitOfMeasure.FahrenheitDifference);

    private static FactValue In(FactValue value, UnitOfMeasure pressure, UnitOfMeasure temperature, UnitOfMeasure difference) => value is not Reading reading ? value : reading.Unit.Dimension switch
    {
        Dimension.Pressure => new Reading(reading.Fact, FromCanonical(reading.Canonical, pressure), pressure),
        Dimension.Temperature => new Reading(reading.Fact, FromCanonical(reading.Canonical, temperature), temperature),
        Dimension.TemperatureDifference => new Reading(reading.Fact, FromCanonical(reading.Canonical, difference), difference),
        _ => reading,
    };

    // Units are linear: two points give the way back.
    private static double FromCanonical(double canonical, UnitOfMeasure unit) => (canonical - unit.ToCanonical(0)) / (unit.ToCanonical(1) - unit.ToCanonical(0));
}
