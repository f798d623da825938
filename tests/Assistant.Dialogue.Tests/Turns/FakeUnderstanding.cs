using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Tests.Turns;

/// <summary>Reads "fact=value unit; fact=word", the contract's commands, and "?question": a stand-in without language.</summary>
internal static class FakeUnderstanding
{
    private static readonly string[] Commands =
        ["why", "repeat", "skip", "undo", "status", "report", "pause", "resume", "help", "done", "handover", "more", "who", "watch", "unwatch", "leave"];

    public static Understood Understand(string text, UnderstandingContext context)
    {
        if (Commands.Contains(text.Split(' ')[0]))
        {
            return Understood.Unknown with { Intent = Intent.Command, Command = text.Split(' ')[0] };
        }

        if (text.IndexOf("leak at ", StringComparison.Ordinal) is >= 0 and var leak)
        {
            return Understood.Unknown with { Intent = Intent.Command, Command = "leak", Leak = text[(leak + 8)..].TrimEnd('.') };
        }

        if (text.Split(' ') is ["ask-for" or "never-mind", var wanted])
        {
            ImmutableArray<Fact> facts = FactCatalogue.Find(wanted) is { } asked ? [asked] : [];
            return Understood.Unknown with { Intent = Intent.Command, Command = text.Split(' ')[0], Requested = new(facts, wanted, text[0] == 'n') };
        }

        if (text.StartsWith('?'))
        {
            return Understood.Unknown with { Intent = Intent.Question, Question = text[1..] };
        }

        if (text.StartsWith('!'))
        {
            return Understood.Unknown with { Intent = Intent.Answer, Clarify = Enum.Parse<Clarify>(text[1..].Split(' ')[0], ignoreCase: true) };
        }

        var values = text.Split(';', StringSplitOptions.TrimEntries).Select(part => Value(part, context)).ToList();
        return values.Contains(null)
            ? Understood.Unknown
            : Understood.Unknown with
            {
                Intent = Intent.Answer,
                Readings = [.. values.OfType<Reading>()],
                Observations = [.. values.OfType<Observation>()],
            };
    }

    private static FactValue? Value(string part, UnderstandingContext context)
    {
        var (name, said) = part.Split('=') is [var left, var right] ? (left, right) : (context.Expected?.Name ?? "", part);
        if (FactCatalogue.Find(name) is not { } fact)
        {
            return null;
        }

        if (!fact.IsQuantity)
        {
            return fact.Choices.IsEmpty || fact.Choices.Contains(said) ? new Observation(fact, said) : null;
        }

        return said.Split(' ', 2) is [var number, var symbol]
            && double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            && FactUnits.Find(fact, symbol) is { } unit
            ? new Reading(fact, value, unit)
            : null;
    }
}
