using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Text;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Understanding;

/// <summary>Turns what a technician says or types into readings, observations, a command or a question. Pure; never throws.</summary>
public sealed class Understander(Lexicon lexicon)
{
    public Understood Understand(string text, UnderstandingContext context)
    {
        var tokens = Tokenizer.Cut(text, lexicon.Words);
        return context.Expected is { } fact && Plain(text, tokens, fact, context.Units) is { } value
            ? Understood.Unknown with
            {
                Intent = Intent.Answer,
                Readings = value is Reading reading ? [reading] : [],
                Observations = value is Observation observation ? [observation] : [],
            }
            : Understood.Unknown;
    }

    private FactValue? Plain(string text, List<Token> tokens, Fact fact, UnitSystem units)
    {
        if (!fact.IsQuantity)
        {
            var said = new string([.. text.Where(char.IsLetterOrDigit)]);
            var choices = fact == FactCatalogue.Refrigerant ? lexicon.Refrigerants.ByNumber.Values.SelectMany(l => l.Select(d => d.Designation)) : fact.Choices;
            var choice = choices.FirstOrDefault(c => said.Equals(new string([.. c.Where(char.IsLetterOrDigit)]), StringComparison.OrdinalIgnoreCase));
            return choice is null ? null : new Observation(fact, choice);
        }

        var at = 0;
        var negative = tokens.Count > 0 && tokens[0].IsWord(lexicon.Signs.Dash);
        var total = 0.0;
        UnitOfMeasure? first = null;
        for (at = negative ? 1 : 0; at < tokens.Count;)
        {
            var number = lexicon.NumberReader.Read(text, tokens, at, _ => false);
            if (!number.Found || number.Open != Numbers.NumberOpen.No)
            {
                return null;
            }

            at = number.End;
            at += lexicon.Units.Units.LongestAt(tokens, at, out var words);
            var unit = words.Select(w => w.Unit).FirstOrDefault(u => u is null || Fits(fact.Kind, u.Dimension)) ?? Default(fact.Kind, units);
            if (unit is null)
            {
                return null;
            }

            total += first is null ? number.Value : first.FromCanonical(unit.ToCanonical(number.Value));
            first ??= unit;
        }

        return first is null ? null : new Reading(fact, negative ? -total : total, first);
    }

    private static bool Fits(FactKind kind, Dimension dimension) =>
        kind.ToString() == dimension.ToString() || (kind == FactKind.TemperatureOrPressure && dimension is Dimension.Temperature or Dimension.Pressure);

    private static UnitOfMeasure? Default(FactKind kind, UnitSystem units) => kind switch
    {
        FactKind.Pressure => units == UnitSystem.Us ? UnitOfMeasure.Psig : UnitOfMeasure.Bar,
        FactKind.Temperature => units == UnitSystem.Us ? UnitOfMeasure.Fahrenheit : UnitOfMeasure.Celsius,
        FactKind.TemperatureDifference => units == UnitSystem.Us ? UnitOfMeasure.FahrenheitDifference : UnitOfMeasure.KelvinDifference,
        FactKind.Mass => units == UnitSystem.Us ? UnitOfMeasure.Pound : UnitOfMeasure.Kilogram,
        FactKind.Current => UnitOfMeasure.Ampere,
        _ => null,
    };
}
