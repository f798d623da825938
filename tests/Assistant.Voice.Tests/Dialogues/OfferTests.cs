using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Hearing;
using Assistant.Voice.Scoring.Kit;

namespace Assistant.Voice.Tests.Dialogues;

/// <summary>Where the assistant itself offers a walk, one clear yes begins it; what is no clear yes does not.</summary>
[Collection(HearingCollection.Name)]
public sealed class OfferTests(HearingParts hearing)
{
    private const double Clear = 20;

    private VoiceDialogue Dialogue => hearing.Parts.Dialogue;

    private List<PutQuestion> Offers => [.. EveryQuestion.Of(hearing.Parts).Where(q => IsOffer(q.Reply))];

    [Fact]
    public void One_clear_yes_begins_every_walk_that_is_offered_and_an_unclear_one_is_read_back()
    {
        Assert.NotEmpty(Offers);
        foreach (var offer in Offers)
        {
            var (clear, unclear) = (Hear(offer, "yeah"), Hear(offer, "yeah", 0.5));

            Assert.Equal("yes", clear.Send);
            Assert.Contains(Events(offer, clear.Send), e => e is WalkStarted or WalkResumed);
            Assert.Null(unclear.Send);
            Assert.Equal("Yes. Correct, or wrong?", unclear.Say);
            Assert.Equal("yes", Dialogue.Hear(unclear.State, new(HeardKind.Words, "correct", 0, Clear)).Send);
        }
    }

    [Fact]
    public void A_no_is_listened_for_beside_the_yes_and_begins_nothing()
    {
        foreach (var offer in Offers)
        {
            var step = Hear(offer, "nope");

            Assert.Equal("no", step.Send);
            Assert.DoesNotContain(Events(offer, step.Send), e => e is WalkStarted or WalkResumed);
        }
    }

    [Theory]
    [InlineData("flite", "slt", double.PositiveInfinity, "yes")]
    [InlineData("flite", "awb", 20, "yeah")]
    [InlineData("festival", "kal_diphone", 10, "yes")]
    public async Task From_the_verdict_to_the_leak_and_on_to_its_repair_each_offer_takes_one_spoken_word(string program, string voice, double decibels, string said)
    {
        var begun = new List<string>();
        var visit = Visit();
        foreach (var line in Lines)
        {
            if (!IsOffer(await visit.NowAsync(default)))
            {
                await visit.SayAsync(line, default);
                continue;
            }

            var turn = await (await ListeningAsync(visit)).HearAsync(FanNoise.Behind(new SyntheticVoice(program, voice).Say(said), decibels, 11));

            Assert.Equal("yes", turn.Sent);
            begun.Add((await visit.NowAsync(default)).Walk!.Walk);
        }

        Assert.Equal(["leak-search", "repair-choice", "pressure-hold"], begun);
    }

    [Theory]
    [InlineData("no", 10)]
    [InlineData("not today", 10)]
    [InlineData("nobody told me about the meeting", 10)]
    [InlineData("nope", 20)]
    public async Task Another_word_near_a_fan_begins_nothing(string said, double decibels)
    {
        var visit = Visit();
        foreach (var line in Lines)
        {
            if (IsOffer(await visit.NowAsync(default)))
            {
                break;
            }

            await visit.SayAsync(line, default);
        }

        var walk = (await visit.NowAsync(default)).Walk!.Walk;
        var turn = await (await ListeningAsync(visit)).HearAsync(FanNoise.Behind(new SyntheticVoice("flite", "slt").Say(said), decibels, 12));

        Assert.NotEqual("yes", turn.Sent);
        Assert.Equal(walk, (await visit.NowAsync(default)).Walk!.Walk);
    }

    private static IEnumerable<string> Lines =>
        File.ReadLines(Path.Combine(VoiceParts.Root, "tests/transcripts/short-charge-to-repair.txt")).Where(l => l.StartsWith('>')).Select(l => l[1..].Trim());

    private static bool IsOffer(Reply reply) => reply is { AskedFact: null, Choices: ["yes", .., "later"] };

    private EngineVisit Visit() => new(hearing.Parts.Engine, UnitSystem.Us, ("refrigerant", "R404A"), ("application", "cooler"), ("low_side_design_pressure", "150 psig"));

    private async Task<VoiceSession> ListeningAsync(EngineVisit visit)
    {
        var session = new VoiceSession(hearing.Parts.Recogniser, Dialogue, visit);
        await session.StartAsync(await visit.NowAsync(default));
        return session;
    }

    private VoiceStep Hear(PutQuestion offer, string words, double margin = Clear) => Dialogue.Hear(Asked(offer), new(HeardKind.Words, words, 0, margin));

    private VoiceState Asked(PutQuestion offer) => Dialogue.Start(offer.Reply, UnitSystem.Us).State with { Phase = VoicePhase.Answer, Unheard = [] };

    private ImmutableArray<VisitEvent> Events(PutQuestion offer, string? sent) => EveryQuestion.Say(hearing.Parts.Engine, offer.State, 200, "a", sent!).Events;
}
