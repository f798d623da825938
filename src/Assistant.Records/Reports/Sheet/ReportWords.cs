using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Records.Readings;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Records.Reports.Sheet;

/// <summary>The words of a report, from the phrase book.</summary>
public sealed class ReportWords(PhraseBook phrases)
{
    /// <summary>Where they come from.</summary>
    public PhraseBook Phrases => phrases;

    /// <summary>A heading, a column or a sentence without blanks.</summary>
    public string this[string key] => phrases.Say($"report.{key}", UnitSystem.Us).Full;

    /// <summary>A sentence with its blanks filled.</summary>
    public string Say(string key, params ReadOnlySpan<(string Name, string Word)> parts)
    {
        var filled = new ReasonPart[parts.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            filled[i] = parts[i];
        }

        return phrases.Say($"report.{key}", UnitSystem.Us, filled).Full;
    }

    /// <summary>What the ledger or a rule says, in the site's units.</summary>
    public string Say(Reason reason, UnitSystem units) => phrases.Say(reason, units).Full;

    /// <summary>A fact by its name: "Suction pressure".</summary>
    public string Fact(string fact) => Sentence(Word(fact));

    /// <summary>A fault by its code, as people say it.</summary>
    public string Fault(string code) => phrases.Has($"fault.{code}") ? phrases.Say($"fault.{code}", UnitSystem.Us).Full : Word(code);

    /// <summary>A word as people say it; a code without a word of its own is spelled with spaces.</summary>
    public string Word(string code)
    {
        var word = phrases.Word(code);
        return word == code ? code.Replace('_', ' ').Replace('-', ' ') : word;
    }

    /// <summary>A caution's sentence, or its code in words.</summary>
    public string Caution(string code) =>
        phrases.Has($"caution.{code}") && !phrases.PlaceholdersOf($"caution.{code}").Any()
            ? phrases.Say($"caution.{code}", UnitSystem.Us).Full
            : Sentence(Word(code));

    /// <summary>A reading's value as it was said: number, digits and unit.</summary>
    public string Value(LoggedReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (reading.Value is not { } value)
        {
            return Word(reading.Word ?? "");
        }

        var unit = UnitOfMeasure.All.FirstOrDefault(u => u.Symbol == reading.Unit);
        var symbol = unit is null ? " " + reading.Unit : AmountText.WrittenSymbol(unit);
        return (value.ToString("0.###", CultureInfo.InvariantCulture) + symbol).TrimEnd();
    }

    /// <summary>A mass in the site's units.</summary>
    public static string Mass(long grams, UnitSystem units) =>
        AmountText.Written(new Amount(grams / 1000.0, Dimension.Mass), units);

    private static string Sentence(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
