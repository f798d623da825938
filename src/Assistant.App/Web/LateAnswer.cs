using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.App.Web;

/// <summary>
/// An answer that was given to a question on the screen and arrives when the visit may have gone on: a bare number must not be taken for
/// what is asked by now.
/// </summary>
internal static class LateAnswer
{
    private const string FactMark = "fact:";
    private const string StopMark = "stop:";

    /// <summary>The words as they are to be understood now: named by the fact they answer where another is asked by now.</summary>
    /// <param name="answers">What stood on the screen: "fact:" with the fact asked for, "stop:" with the stop to be confirmed, or null.</param>
    /// <exception cref="RequestRefused">They confirm a stop the visit has left, or name no fact.</exception>
    public static string Meant(string text, string? answers, VisitState state, Reply now, PhraseBook phrases)
    {
        if (answers is null)
        {
            return text;
        }

        if (answers.StartsWith(StopMark, StringComparison.Ordinal))
        {
            return answers[StopMark.Length..] == (now.Walk?.Stop ?? state.Stop) ? text : throw GoneOn(text);
        }

        var fact = answers.StartsWith(FactMark, StringComparison.Ordinal) ? FactCatalogue.Find(answers[FactMark.Length..]) : null;
        return fact is null ? throw new RequestRefused("answers: fact: or stop: with a name the program knows.")
            : now.AskedFact == fact.Name ? text
            : NamedReadings.Say(fact, text, phrases) ?? throw GoneOn(text);
    }

    private static RequestRefused GoneOn(string text) =>
        new($"The visit has gone on from there meanwhile, so \"{text}\" was not taken. Look at what is asked now.", StatusCodes.Status409Conflict);
}
