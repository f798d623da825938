using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Questions;

/// <summary>"When will it be down": from the box temperatures of this visit.</summary>
internal static class PullDownQuestion
{
    public static Answer Answer(Asked asked)
    {
        if (asked.Temperature(FactCatalogue.Setpoint) is not { } setpoint)
        {
            return asked.Needs(FactCatalogue.Setpoint);
        }

        if (PullDown.Fit(asked.Course.Box, setpoint) is not { } fit)
        {
            return new(Replies.Phrase.Empty, [], asked.Say("answer.pull-down.needs"));
        }

        if (fit.ToSetpoint is not { } time)
        {
            return asked.Answer("answer.pull-down.never", ("end", fit.LevelsOffAt), ("setpoint", setpoint));
        }

        return time.Seconds <= 0
            ? asked.Answer("answer.pull-down.there", ("setpoint", setpoint))
            : Asked.Because(
                asked.Say("answer.pull-down.time", ("time", new Amount(time.Seconds, Dimension.Time)), ("setpoint", setpoint)),
                asked.Say("answer.pull-down.assumes"));
    }
}
