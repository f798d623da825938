using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;
using CsCheck;

namespace Assistant.Trade.Tests.Rules;

public class AssessorPropertyTests
{
    private static readonly Gen<FactValue> AnyValue = Gen.OneOf([.. FactCatalogue.All.Select(ValueOf)]);

    private static readonly Gen<FactSet> AnyFacts = AnyValue.Array[0, 30].Select(values => FactSet.Of(values.DistinctBy(v => v.Fact)));

    // A set that shows each fault, and one more sign of it that may come in.
    private static readonly (string[] Facts, string Agreeing, FaultCode Fault)[] Agreements =
    [
        (["coil_ice blocked"], "suction_line_temperature_at_bulb 18 degF", FaultCode.CoilIced),
        (["refrigerant R404A", "sight_glass flashing", "suction_line_temperature_at_bulb 34 degF", "suction_pressure 40 psig"], "coil_ice distributor-end", FaultCode.Undercharge),
        (["refrigerant R22", "discharge_pressure 280 psig", "ambient_temperature 80 degF", "condenser_coil dirty"], "condenser_fans some", FaultCode.CondenserAirflow),
        (["refrigerant R22", "discharge_pressure 330 psig", "ambient_temperature 80 degF", "liquid_line_temperature 112 degF", "high_side_standing_pressure 200 psig"], "sight_glass clear", FaultCode.Noncondensables),
        (["refrigerant R22", "discharge_pressure 330 psig", "ambient_temperature 80 degF", "liquid_line_temperature 112 degF"], "high_side_standing_pressure 144 psig", FaultCode.Overcharge),
        (["calling_for_cooling yes", "solenoid_energised no"], "compressor off", FaultCode.NoLiquidFeed),
        (["box_temperature 45 degF", "box_temperature_check 36 degF"], "evaporator_air_in 36 degF", FaultCode.SensorError),
        (["evaporator_fans some", "coil_ice none"], "sight_glass clear", FaultCode.EvaporatorAirflow),
    ];

    public static TheoryData<int> EachAgreement => [.. Enumerable.Range(0, Agreements.Length)];

    [Fact]
    public void No_set_of_facts_makes_it_throw() =>
        AnyFacts.Sample(facts => Assessor.Assess(facts).Findings.Length > 0, iter: 3000);

    [Fact]
    public void Findings_stand_best_first_ruled_out_last_and_each_fault_once() => AnyFacts.Sample(
        facts =>
        {
            var findings = Assessor.Assess(facts).Findings;
            var open = findings.TakeWhile(f => f.Standing != Standing.RuledOut).ToList();
            return findings.Skip(open.Count).All(f => f.Standing == Standing.RuledOut)
                && findings.Select(f => f.Code).Distinct().Count() == findings.Length
                && open.Count > 0
                && open.Zip(open.Skip(1)).All(p => p.First.Standing <= p.Second.Standing);
        },
        iter: 3000);

    [Fact]
    public void The_order_of_the_facts_changes_nothing() => AnyValue.Array[0, 30].Sample(
        values =>
        {
            var once = values.DistinctBy(v => v.Fact).ToList();
            return Told(FactSet.Of(once)) == Told(FactSet.Of(Enumerable.Reverse(once)));
        },
        iter: 1000);

    [Fact]
    public void The_units_a_reading_is_given_in_change_no_verdict() => AnyFacts.Sample(
        facts =>
        {
            // A reading that others gainsay is looked at in other units, so only sets that hold together are compared.
            var plain = Assessor.Assess(facts);
            var other = Assessor.Assess(FactSet.Of(facts.Values.Select(InCanonicalUnits)));
            return !plain.Rejected.IsEmpty || !other.Rejected.IsEmpty || plain.Findings[0].Code == other.Findings[0].Code;
        },
        iter: 2000);

    [Theory]
    [MemberData(nameof(EachAgreement))]
    public void A_fact_that_agrees_never_lowers_a_standing(int row)
    {
        var (facts, agreeing, fault) = Agreements[row];
        var before = FactsOf.Visit(facts);
        var after = before.With(FactsOf.Value(agreeing));

        Assert.True(StandingOf(after, fault) <= StandingOf(before, fault), $"{fault}: {StandingOf(before, fault)} became {StandingOf(after, fault)}");
    }

    [Fact]
    public void The_next_fact_is_one_that_is_not_known_yet() => AnyFacts.Sample(
        facts => Assessor.Assess(facts) is var assessment && (assessment.Next is not { } next || !facts.Has(next) || assessment.Rejected.Any(r => r.Value.Fact == next)),
        iter: 2000);

    private static Standing StandingOf(FactSet facts, FaultCode fault) =>
        Assessor.Assess(facts).Findings.FirstOrDefault(f => f.Code == fault)?.Standing ?? Standing.RuledOut;

    private static string Told(FactSet facts)
    {
        var assessment = Assessor.Assess(facts);
        return string.Join(" ", assessment.Findings.Select(f => $"{f.Code}:{f.Standing}")) + " " + assessment.Next + " "
            + string.Join(" ", assessment.Cautions) + " " + string.Join(" ", assessment.Rejected.Select(r => r.Value.Fact));
    }

    private static FactValue InCanonicalUnits(FactValue value) => value is Reading { Unit.IsAbsolutePressure: false } reading ? reading.Unit.Dimension switch
    {
        Dimension.Pressure => new Reading(reading.Fact, reading.Canonical, UnitOfMeasure.Kilopascal),
        Dimension.Temperature => new Reading(reading.Fact, reading.Canonical, UnitOfMeasure.Celsius),
        Dimension.TemperatureDifference => new Reading(reading.Fact, reading.Canonical, UnitOfMeasure.KelvinDifference),
        _ => reading,
    }
    : value;

    private static Gen<FactValue> ValueOf(Fact fact)
    {
        if (!fact.IsQuantity)
        {
            var choices = fact == FactCatalogue.Refrigerant ? ["R404A", "R134a", "R448A", "R744", "R717", "R290", "nonsense"] : fact.Choices.ToArray();
            return Gen.OneOf(choices).Select(c => (FactValue)new Observation(fact, c));
        }

        var units = UnitOfMeasure.All.Where(u => u.Dimension.ToString() == fact.Kind.ToString()
            || (fact.Kind == FactKind.TemperatureOrPressure && u.Dimension is Dimension.Temperature or Dimension.Pressure)).ToArray();
        return Gen.Select(Gen.OneOf<double>(Gen.Double[-60, 250], Gen.Double[-1e9, 1e9], Gen.OneOf(0.0, double.NaN, double.PositiveInfinity)), Gen.OneOf(units),
            (number, unit) => (FactValue)new Reading(fact, number, unit));
    }
}
