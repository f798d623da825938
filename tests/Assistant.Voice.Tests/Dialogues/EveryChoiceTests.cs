using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Quantities;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Hearing;
using Assistant.Voice.Speaking;
using Xunit.Abstractions;

namespace Assistant.Voice.Tests.Dialogues;

/// <summary>Whatever a question offers can be said by voice, is read back, and means to the conversation what it means where it is typed.</summary>
[Collection(HearingCollection.Name)]
public sealed class EveryChoiceTests(HearingParts hearing, ITestOutputHelper output)
{
    private const double Clear = 20;

    private static readonly Heard Yes = new(HeardKind.Words, "correct", 0, Clear);

    private VoiceDialogue Dialogue => hearing.Parts.Dialogue;

    [Fact]
    public void Every_stop_that_chooses_is_among_the_questions_looked_at()
    {
        var stops = hearing.Parts.Walks.All.SelectMany(w => w.Stops.Where(s => s.Kind == StopKind.Chooses), (w, s) => $"{w.Name} {s.Name}").ToHashSet();
        var met = Questions.Where(q => q.Reply.AskedFact is null).Select(q => $"{q.Reply.Walk?.Walk} {q.Reply.Walk?.Stop}").ToHashSet();

        Assert.Empty(stops.Except(met));
    }

    [Theory]
    [InlineData("ok")]
    [InlineData("done|later")]
    [InlineData("yes|later")]
    [InlineData("yes|done|later")]
    [InlineData("yes|no")]
    [InlineData("charged|recovered|moved|lost")]
    [InlineData("don't know")]
    [InlineData("above zero|below zero")]
    [InlineData("psig|")]
    [InlineData("none|light|distributor-end|blocked")]
    [InlineData("a 41 °F|b 55 °F")]
    [InlineData("a some|b none")]
    public void Every_kind_of_question_is_among_those_looked_at(string choices) =>
        Assert.Contains(Questions, q => $"{string.Join('|', q.Reply.Choices)}|".StartsWith(choices, StringComparison.Ordinal));

    [Fact]
    public void Every_word_of_a_walks_options_and_of_a_leaks_places_has_a_sound()
    {
        var words = hearing.Parts.Walks.All.SelectMany(w => w.Stops).SelectMany(s => s.Choice?.Options ?? []).SelectMany(o => o.Words).Concat(hearing.Parts.LexiconPhrases.LeakPlaces)
            .SelectMany(p => p.Split(' ')).Where(w => !w.Any(char.IsDigit)).Distinct();

        // "an" is in inches in another place: "half an hour" stays for the keyboard.
        Assert.Equal("an", string.Join(' ', words.Where(w => !hearing.Parts.Sounds.Knows(w))));
    }

    [Fact]
    public void Every_question_of_a_walk_says_aloud_what_it_takes()
    {
        foreach (var question in Questions.Where(q => hearing.Parts.Grammars.Numbered(q.Reply).Count > 0))
        {
            var said = $" {ShortWords.Plain(ReplySpeech.Question(question.Reply))} ";
            var grammar = Dialogue.Grammar(Asked(question));

            Assert.All(question.Reply.Choices, c => Assert.True(
                grammar.Meanings["option:" + c].Any(p => said.Contains($" {p} ", StringComparison.Ordinal)), $"\"{said}\" does not say \"{c}\""));
        }
    }

    [Fact]
    public void What_another_asks_for_beside_a_step_is_said_to_come_after_it()
    {
        var beside = Questions.Where(q => q.Reply is { AskedFact: null, Choices: ["ok"] } && q.Reply.Ask!.Full.Contains(" asks: ", StringComparison.Ordinal)).ToList();

        Assert.NotEmpty(beside);
        Assert.All(beside, q => Assert.Contains("After that, ", q.Reply.Ask!.Aloud, StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_that_is_sent_without_a_read_back_chooses_names_a_leak_or_is_a_value()
    {
        var sent = 0;
        foreach (var question in Questions)
        {
            var state = Asked(question);
            foreach (var phrase in Dialogue.Grammar(state).Meanings.Where(m => m.Key is not ("accept" or "command:emergency")).SelectMany(m => m.Value))
            {
                if (Dialogue.Hear(state, new(HeardKind.Words, phrase, 0, Clear)).Send is { } text)
                {
                    sent++;
                    var events = EveryQuestion.Say(hearing.Parts.Engine, question.State, 200, "a", text).Events;
                    Assert.False(events.Any(e => e is StopChosen or LeakFound || (e is WalkStarted && !IsYesToAnOffer(question, text)) || (e is FactTaken && text != "skip")), $"\"{phrase}\" at {question.Where} sends \"{text}\"");
                }
            }
        }

        Assert.True(sent > 1000, $"Only {sent} were looked at.");
    }

    [Fact]
    public void Every_choice_of_every_question_can_be_said_and_means_what_it_means_typed()
    {
        var (looked, missing) = (0, new SortedDictionary<string, string>(StringComparer.Ordinal));
        foreach (var question in Questions.Where(q => !q.Reply.Choices.IsEmpty))
        {
            var (leadTo, nonsense) = (Leading(question), After(question, "xyzzy"));
            foreach (var choice in question.Reply.Choices)
            {
                looked++;
                if (After(question, choice) is var after && (!leadTo.TryGetValue(after, out var sent) || (after == nonsense && sent != choice)))
                {
                    missing[$"{question.Reply.Walk?.Walk} {question.Reply.Walk?.Stop} {question.Reply.AskedFact} [{string.Join(", ", question.Reply.Choices)}]: {choice}"] = question.Where;
                }
            }
        }

        output.WriteLine($"{looked} choices looked at, {missing.Count} can not be said");
        Assert.True(missing.Count == 0, $"{missing.Count} of {looked} choices can not be said by voice:\n" + string.Join('\n', missing.Select(m => $"{m.Key} ({m.Value})")));
    }

    private IReadOnlyList<PutQuestion> Questions => EveryQuestion.Of(hearing.Parts);

    private static bool IsYesToAnOffer(PutQuestion question, string text) => text == "yes" && question.Reply is { AskedFact: null, Choices: ["yes", .., "later"] };

    private VoiceState Asked(PutQuestion question) => Dialogue.Start(question.Reply, UnitSystem.Us).State with { Phase = VoicePhase.Answer, Unheard = [] };

    // What the conversation answers to all that can be said here, one phrase with a sound of each meaning, and what it is told.
    private Dictionary<string, string> Leading(PutQuestion question)
    {
        var state = Asked(question);
        var found = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var phrase in Dialogue.Grammar(state).Meanings.Values.Select(p => p.FirstOrDefault(hearing.Parts.Sounds.CanBeHeard)).OfType<string>())
        {
            if (Sent(state, phrase) is { } sent)
            {
                found.TryAdd(After(question, sent), sent);
            }
        }

        return found;
    }

    private string? Sent(VoiceState state, string words)
    {
        var heard = Dialogue.Hear(state, new(HeardKind.Words, words, 0, Clear));
        return heard.Send ?? (heard.State.Phase == VoicePhase.Confirmation ? Dialogue.Hear(heard.State, Yes).Send : null);
    }

    private string After(PutQuestion question, string text)
    {
        var reply = EveryQuestion.Say(hearing.Parts.Engine, question.State, 200, "a", text).Reply;
        return $"{reply.Say.Full} {reply.Ask?.Full} {reply.Walk} {reply.AskedFact}";
    }
}
