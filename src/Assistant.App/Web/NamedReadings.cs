using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;

namespace Assistant.App.Web;

/// <summary>A reading in words that are understood as that reading whatever is asked: how the page says one that is entered by its name.</summary>
internal static class NamedReadings
{
    /// <summary>What the fact is called before its value; null for one that only its own question can bring.</summary>
    public static string? Name(Fact fact, PhraseBook phrases) =>
        IsAskedOnly(fact) ? null : Own($"page.entry.{fact.Name}", phrases) ?? phrases.Word(fact.Name);

    /// <summary>The words for each choice of a fact; empty for one that takes a number.</summary>
    public static IReadOnlyDictionary<string, string> Choices(Fact fact, PhraseBook phrases) => Name(fact, phrases) is { } name
        ? fact.Choices.ToDictionary(choice => choice, choice => Own($"page.entry.{fact.Name}.{choice}", phrases) ?? $"{name} {choice.Replace('-', ' ')}")
        : new Dictionary<string, string>();

    /// <summary>An answer as it was given to the fact's own question, said so that it stands without the question; null where it can not.</summary>
    public static string? Say(Fact fact, string answer, PhraseBook phrases) =>
        Choices(fact, phrases).FirstOrDefault(c => c.Key.Replace('-', ' ').Equals(answer.Replace('-', ' '), StringComparison.OrdinalIgnoreCase)).Value
            ?? (Name(fact, phrases) is { } name ? $"{name} {answer}" : null);

    // What is only an answer to its own question has no words that stand alone.
    private static bool IsAskedOnly(Fact fact) => fact.Name is "wrong_thermometer" or "pulling_down";

    private static string? Own(string key, PhraseBook phrases) => phrases.Has(key) ? phrases.Say(key, default).Full : null;
}
