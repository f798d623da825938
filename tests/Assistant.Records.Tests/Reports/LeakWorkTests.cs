using Assistant.Dialogue.Visits;
using Assistant.Records.Reports.Model;
using Assistant.Records.Tests.Support;
using Assistant.Trade.Regulations;

namespace Assistant.Records.Tests.Reports;

/// <summary>What the visits tell of a leak's mending, as the leak rules count it. Each word is an event; "+5" moves the clock on by days and opens the next visit.</summary>
public sealed class LeakWorkTests
{
    [Theory]
    [InlineData("found plan:braze repaired holds", "repaired 0; initial passed 0")]
    [InlineData("found mended", "repaired 0")]
    [InlineData("found holds tight", "repaired 0; initial passed 0")]                                  // what holds was mended, whoever said so
    [InlineData("found plan:make-safe repaired", "")]                                                 // made safe is not mended
    [InlineData("mended holds", "")]                                                                  // a top-up and a test where no leak is on record
    [InlineData("found +1 mended", "")]                                                               // a top-up on another visit mends no leak
    [InlineData("found mended leaks", "repaired 0; initial failed 0")]
    [InlineData("found mended holds leaking-caps", "repaired 0; initial passed 0; initial failed 0")]
    [InlineData("found mended holds +4 leaking-caps", "repaired 0; initial passed 0; follow-up failed 4")]
    [InlineData("found mended holds caps-off caps-on on-target", "repaired 0; initial passed 0; running 0")]   // the same day proves nothing yet
    [InlineData("found mended holds +4 caps-off on-target", "repaired 0; initial passed 0; running 4")]
    [InlineData("found mended holds +4 caps-off caps-on on-target", "repaired 0; initial passed 0; follow-up passed 4")]
    [InlineData("found mended holds +4 caps-off caps-on on-target +9 on-target", "repaired 0; initial passed 0; follow-up passed 4")]
    [InlineData("search areas", "inspected 0")]
    [InlineData("search skipped areas", "")]
    [InlineData("search skipped areas search areas", "inspected 0")]
    public void Only_what_stands_on_record_counts(string told, string expected)
    {
        var day = 0;
        List<(string, VisitEvent)> events = [];
        foreach (var word in told.Split(' '))
        {
            if (word[0] == '+')
            {
                day += int.Parse(word, System.Globalization.CultureInfo.InvariantCulture);
                continue;
            }

            events.Add(($"visit {day}", Event(word) with { At = Invented.Morning.AddDays(day) }));
        }

        Assert.Equal(expected, string.Join("; ", LeakWork.Of(events).Events.Select(Spoken)));
    }

    // A walk that calls a stop, a choice or an outcome otherwise would make no service any more, and nothing else would show it.
    [Theory]
    [InlineData("repair-choice", "judges: repair-plan", "rebuild", "make-anew", "replace-flared", "braze")]
    [InlineData("pressure-hold", "judges: nitrogen-hold", "holds", "leaking")]
    [InlineData("vacuum", "judges: vacuum-decay", "tight", "leak")]
    [InlineData("close-out", "chooses: tight-caps-off", "tight", "leaking")]
    [InlineData("close-out", "chooses: tight-caps-on", "tight", "leaking")]
    [InlineData("close-out", "judges: final-readings")]
    [InlineData("leak-search", "judges: leak-areas", "some", "none")]
    public void The_walks_call_it_so(string walk, string stop, params string[] outcomes)
    {
        var text = File.ReadAllText(Repository.PathOf("dialogs", "walks", walk + ".yaml"));

        Assert.Contains(stop, text, StringComparison.Ordinal);
        Assert.All(outcomes, o => Assert.Matches($@"[\[ ,]{o}[\] ,}}]", text));
    }

    private static VisitEvent Event(string word) => word switch
    {
        "found" => new LeakFound("a flare") { At = default, By = "Robin" },
        "repaired" => new WalkFinished("repair-choice") { At = default, By = "Robin" },
        "mended" => new FaultMended("undercharge", []) { At = default, By = "Robin" },
        "holds" => Judged("pressure-hold", "nitrogen-hold", "holds"),
        "leaks" => Judged("pressure-hold", "nitrogen-hold", "leaking"),
        "tight" => Judged("vacuum", "vacuum-decay", "tight"),
        "caps-off" => new StopChosen("close-out", "tight-off", "tight-caps-off", "tight") { At = default, By = "Robin" },
        "caps-on" => new StopChosen("close-out", "caps-on", "tight-caps-on", "tight") { At = default, By = "Robin" },
        "leaking-caps" => new StopChosen("close-out", "caps-on", "tight-caps-on", "leaking") { At = default, By = "Robin" },
        "on-target" => Judged("close-out", "final-readings", "on-target"),
        "search" => new WalkStarted("leak-search") { At = default, By = "Robin" },
        "skipped" => new StopSkipped("leak-search", "at-coil") { At = default, By = "Robin" },
        "areas" => Judged("leak-search", "leak-areas", "none"),
        _ => Judged("repair-choice", "repair-plan", word["plan:".Length..]),
    };

    private static JudgementGiven Judged(string walk, string judgement, string outcome) => new(walk, "stop", judgement, outcome, "", []) { At = default, By = "Robin" };

    private static string Spoken(ServiceEvent happened)
    {
        var day = happened.On.DayNumber - DateOnly.FromDateTime(Invented.Morning.DateTime).DayNumber;
        return happened switch
        {
            LeakRepaired => $"repaired {day}",
            LeakInspected => $"inspected {day}",
            NormalRunningReached => $"running {day}",
            VerificationTested tested => $"{(tested.Test == VerificationTest.Initial ? "initial" : "follow-up")} {(tested.Passed ? "passed" : "failed")} {day}",
            _ => happened.ToString(),
        };
    }
}
