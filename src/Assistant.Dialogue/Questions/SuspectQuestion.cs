using Assistant.Dialogue.Replies;
using Assistant.Trade;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Questions;

/// <summary>"Why not the valve", "could it be low on gas": how a fault stands by what was read so far, with what speaks for it and against it.</summary>
internal static class SuspectQuestion
{
    private const int MostReasons = 3;

    public static Answer Answer(Asked asked)
    {
        var findings = Assessor.Assess(asked.Facts).Findings;
        var suspects = asked.Arguments.Suspects;
        var found = findings.FirstOrDefault(f => suspects.Contains(f.Code));
        if (found is null)
        {
            return asked.Answer("answer.suspect.nothing", ("fault", "fault." + Codes.Of(suspects[0])));
        }

        var against = found.Against.Take(MostReasons).Select(r => Against(asked, r));
        var because = found.Standing == Standing.RuledOut ? [] : found.Because.Take(MostReasons).Select(asked.Say);
        return Asked.Because(asked.Say("answer.suspect." + Codes.Of(found.Standing), ("fault", "fault." + Codes.Of(found.Code))), [.. because, .. against]);
    }

    private static Phrase Against(Asked asked, Reason reason)
    {
        var said = asked.Say(reason);
        return new(asked.Say("reason.against", ("reason", said.Full)).Full, asked.Say("reason.against", ("reason", said.Brief)).Brief);
    }
}
