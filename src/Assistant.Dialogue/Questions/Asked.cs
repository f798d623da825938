using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Rules;
using UnitsNet;
using UnitSystem = Assistant.Trade.Quantities.UnitSystem;

namespace Assistant.Dialogue.Questions;

/// <summary>
/// A question with all that can answer it: its own numbers first, then what the visit knows. Statements made in the same breath
/// count as known.
/// </summary>
internal sealed class Asked(PhraseBook book, Understood understood, FactSet known, UnitSystem units, VisitCourse course, Fact? wanted = null)
{
    /// <summary>Dew and bubble are both said where they lie further apart than one degF.</summary>
    private static readonly TemperatureDifference GlideWorthSaying = TemperatureDifference.FromFahrenheitDegrees(1);

    public FactSet Facts { get; } =
        understood.Readings.Cast<FactValue>().Concat(understood.Observations).Aggregate(known, (facts, value) => facts.With(value));

    public QuestionArguments Arguments => understood.Arguments;

    /// <summary>What the visit asks for now, or null.</summary>
    public Fact? Wanted => wanted;

    public VisitCourse Course => course;

    public UnitSystem Units => units;

    public Refrigerant? Refrigerant => RefrigerantLibrary.Find(RefrigerantName);

    public bool IsFreezer => Facts.Is(FactCatalogue.Application, "freezer");

    private string? RefrigerantName => Arguments.Refrigerant ?? Facts.Word(FactCatalogue.Refrigerant);

    /// <summary>True where a number in the question was named as this fact.</summary>
    public bool Names(Fact fact) => Arguments.Numbers.Any(n => n.Fact == fact);

    /// <summary>The pressure in the question, else the first of these facts that is known.</summary>
    public AbsolutePressure? Pressure(params ReadOnlySpan<Fact> facts)
    {
        if (QuestionNumbers.Find(Arguments, Dimension.Pressure, facts) is { } number)
        {
            return Facts.With(Reading(number, Dimension.Pressure, FactCatalogue.StandingPressure)).Pressure(FactCatalogue.StandingPressure);
        }

        return First(facts, Facts.Pressure);
    }

    public CelsiusTemperature? Temperature(params ReadOnlySpan<Fact> facts) =>
        Said(Dimension.Temperature, facts) is { } degrees ? new(degrees) : First(facts, Facts.Temperature);

    public TemperatureDifference? Difference(params ReadOnlySpan<Fact> facts) =>
        Said(Dimension.TemperatureDifference, facts) is { } kelvins ? new(kelvins) : First(facts, Facts.Difference);

    /// <summary>A difference named as this fact in the question, else the fact; never an unnamed one, which "degrees" would make of a temperature.</summary>
    public TemperatureDifference? NamedDifference(Fact fact) =>
        Names(fact) && Said(Dimension.TemperatureDifference, [fact]) is { } kelvins ? new(kelvins) : Facts.Difference(fact);

    public Mass? Mass(params ReadOnlySpan<Fact> facts) =>
        Said(Dimension.Mass, facts) is { } kilograms ? UnitsNet.Mass.FromKilograms(kilograms) : First<Mass>(facts, fact => Known(fact, Dimension.Mass) is { } kg ? UnitsNet.Mass.FromKilograms(kg) : null);

    public Volume? Volume(params ReadOnlySpan<Fact> facts) =>
        Said(Dimension.Volume, facts) is { } cubicMeters ? UnitsNet.Volume.FromCubicMeters(cubicMeters) : First<Volume>(facts, fact => Known(fact, Dimension.Volume) is { } m3 ? UnitsNet.Volume.FromCubicMeters(m3) : null);

    /// <summary>The canonical value of the number in the question that fits, or null.</summary>
    public double? Said(Dimension dimension, params ReadOnlySpan<Fact> facts) =>
        QuestionNumbers.Find(Arguments, dimension, facts) is { } number ? QuestionNumbers.UnitOf(number, dimension, units).ToCanonical(number.Value) : null;

    public double? Known(Fact fact, Dimension dimension) => Facts.Quantity(fact, dimension);

    /// <summary>As the site's gauge shows it.</summary>
    public Amount Gauge(AbsolutePressure pressure) => pressure.ToGauge(Facts.Barometer);

    /// <summary>True where a blend's dew and bubble temperatures at a pressure differ by more than a degree; both inside the table.</summary>
    public static bool HasGlide(Refrigerant refrigerant, AbsolutePressure pressure) =>
        refrigerant.Saturation.TryDewTemperature(pressure, out var dew)
        && refrigerant.Saturation.TryBubbleTemperature(pressure, out var bubble)
        && dew - bubble > GlideWorthSaying;

    public Phrase Say(string key, params ReadOnlySpan<ReasonPart> parts) => book.Say(key, units, parts);

    public Phrase Say(Reason reason) => book.Say(reason, units);

    /// <summary>True where the phrase book has that sentence.</summary>
    public bool Has(string key) => book.Has(key);

    public Answer Answer(string key, params ReadOnlySpan<ReasonPart> parts) => new(Say(key, parts), [], null);

    public static Answer Because(Phrase say, params ImmutableArray<Phrase?> because) => new(say, [.. because.OfType<Phrase>()], null);

    /// <summary>Nothing can be said until this is known.</summary>
    public Answer Needs(Fact fact) => new(Phrase.Empty, [], Say("answer.needs", ("fact", fact.Name)));

    public Answer NeedsRefrigerant() => RefrigerantName is { } name
        ? Answer("answer.no-table", ("refrigerant", name))
        : Needs(FactCatalogue.Refrigerant);

    /// <summary>The refrigerant has no value there: which temperatures its table covers.</summary>
    public Answer OutOfTable(Refrigerant refrigerant) => Answer(
        "answer.out-of-table",
        ("refrigerant", refrigerant.Designation),
        ("low", refrigerant.Saturation.Temperatures.Lowest),
        ("high", refrigerant.Saturation.Temperatures.Highest));

    private Reading Reading(QuestionNumber number, Dimension dimension, Fact fact) => new(fact, number.Value, QuestionNumbers.UnitOf(number, dimension, units));

    private static T? First<T>(ReadOnlySpan<Fact> facts, Func<Fact, T?> value)
        where T : struct
    {
        foreach (var fact in facts)
        {
            if (value(fact) is { } found)
            {
                return found;
            }
        }

        return null;
    }
}
