using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Questions;

/// <summary>"What was the head again": what the visit holds for it.</summary>
internal static class RecallQuestion
{
    public static Answer Answer(Asked asked) => asked.Arguments.About is { } fact
        ? asked.Facts.Find(fact) is { } value
            ? asked.Answer(value is Reading ? "taken.reading" : "taken.observation", ("fact", fact.Name), ("value", FactText.Of(value)))
            : asked.Answer("answer.recall.none", ("fact", fact.Name))
        : new(Phrase.Empty, [], asked.Say("unanswered.question"));
}
