using Assistant.Trade.Rules.Derivation;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Tests.Rules.Derivation;

/// <summary>What a symptom reads for a few facts, written the short way and parted by semicolons.</summary>
internal static class SymptomReadings
{
    public static PlantState State(string facts) => new(FactsOf.Visit(facts.Split(';', StringSplitOptions.RemoveEmptyEntries)));

    public static Measure Of(string facts, Symptom symptom) => SymptomReader.Read(State(facts))[symptom];

    /// <param name="symptom">By name: a test's own parameters are public, the symptoms are not.</param>
    public static Measure Of(string facts, string symptom) => Of(facts, Enum.Parse<Symptom>(symptom));
}
