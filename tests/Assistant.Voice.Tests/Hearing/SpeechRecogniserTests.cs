using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Grammars;
using Assistant.Voice.Hearing;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Tests.Hearing;

[Collection(HearingCollection.Name)]
public sealed class SpeechRecogniserTests(HearingParts hearing)
{
    private static readonly SyntheticVoice Voice = new("flite", "slt");

    private SpeechGrammar Suction => hearing.Parts.Grammars.For(FactCatalogue.SuctionPressure, [], UnitSystem.Us);

    [Theory]
    [InlineData("suction_pressure", "thirty six pounds", "thirty six pounds")]
    [InlineData("discharge_pressure", "two twenty six", "two twenty six")]
    [InlineData("discharge_pressure", "one seventeen p s i", "one seventeen psi")]
    [InlineData("box_temperature", "minus ten", "minus ten")]
    [InlineData("vacuum", "twenty two hundred microns", "twenty two hundred microns")]
    [InlineData("condenser_coil", "dirty", "dirty")]
    [InlineData("calling_for_cooling", "yes", "yes")]
    public void An_answer_said_clearly_is_heard_word_for_word(string fact, string said, string heard)
    {
        var grammar = hearing.Parts.Grammars.For(FactCatalogue.Find(fact)!, [], UnitSystem.Us);

        Assert.Equal(heard, hearing.Parts.Recogniser.Hear(FanNoise.Behind(Voice.Say(said), double.PositiveInfinity, 1), grammar).Accepted);
    }

    [Fact]
    public void The_same_sound_gives_the_same_words_twenty_times_whatever_was_heard_between()
    {
        var sound = FanNoise.Behind(Voice.Say("one sixteen"), 10, 3);
        var between = FanNoise.Behind(Voice.Say("stop"), 20, 4);
        var first = hearing.Parts.Recogniser.Hear(sound, Suction);
        for (var i = 0; i < 20; i++)
        {
            hearing.Parts.Recogniser.Hear(between, hearing.Parts.Grammars.Control);

            Assert.Equal(first, hearing.Parts.Recogniser.Hear(sound, Suction));
        }
    }

    [Theory]
    [InlineData("did you bring the sandwiches from the truck")]
    [InlineData("the delivery came early this morning")]
    public void Speech_that_is_not_for_us_is_kept_out(string said) =>
        Assert.Null(hearing.Parts.Recogniser.Hear(FanNoise.Behind(Voice.Say(said), 20, 5), Suction).Accepted);

    [Fact]
    public void Words_told_from_others_have_a_margin_and_others_that_come_to_nothing_leave_it_unclear()
    {
        var confirm = hearing.Parts.Grammars.Confirm;
        var correct = FanNoise.Behind(Voice.Say("correct"), double.PositiveInfinity, 1);
        // Nobody can say so many words in so short a sound: no way through them ends.
        var endless = QuestionGrammars.Just(string.Join(' ', Enumerable.Repeat("one hundred seventeen", 20)));

        Assert.InRange(hearing.Parts.Recogniser.Hear(correct, confirm, _ => confirm.Only("reject")).Margin!.Value, 2, 1000);
        Assert.Equal(0, hearing.Parts.Recogniser.Hear(correct, confirm, _ => endless).Margin);
    }

    [Fact]
    public void Words_compared_with_themselves_fit_no_better_than_themselves()
    {
        // The second search reads what the first wrote down of the sound: were it another's, it would not come to the same figure.
        var heard = hearing.Parts.Recogniser.Hear(FanNoise.Behind(Voice.Say("one seventeen"), 20, 6), Suction, QuestionGrammars.Just);

        Assert.Equal("one seventeen", heard.Words);
        Assert.Equal(0, heard.Margin!.Value, tolerance: 0.5);
    }

    [Fact]
    public void After_sounds_longer_than_anybody_answers_the_same_sound_is_heard_as_before_them()
    {
        var answer = FanNoise.Behind(Voice.Say("thirty six pounds"), 20, 7);
        var before = hearing.Parts.Recogniser.Hear(answer, Suction);
        var fan = FanNoise.Alone(25, 300, 8).Samples;
        foreach (var seconds in new[] { 25, 9, 18 })
        {
            var last = new PcmAudio([.. answer.Samples, .. fan.Take(seconds * PcmAudio.HearingRate)], PcmAudio.HearingRate);
            hearing.Parts.Recogniser.Hear(last, Suction, words => QuestionGrammars.Just(words));
        }

        Assert.Equal(before, hearing.Parts.Recogniser.Hear(answer, Suction));
    }

    [Fact]
    public async Task Nothing_of_an_utterance_is_left_once_it_has_been_heard()
    {
        var before = Written();
        hearing.Parts.Recogniser.Hear(FanNoise.Behind(Voice.Say("thirty six pounds"), 20, 9), Suction);
        var left = Written().Except(before).ToList();
        // What another program is hearing just now goes as well, and comes again under the same name with its next utterance.
        for (var i = 0; i < 3000 && left.Count > 0; i++)
        {
            left.RemoveAll(file => !File.Exists(file));
            await Task.Delay(1);
        }

        Assert.Empty(left);
    }

    private static List<string> Written() => [.. Directory.GetDirectories(Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath(), "coldwalk-hearing-*").Where(Directory.Exists).SelectMany(Directory.GetFiles)];

    [Fact]
    public void A_sound_too_short_or_too_faint_is_noise()
    {
        Assert.Equal(HeardKind.Noise, hearing.Parts.Recogniser.Hear(FanNoise.Alone(0.1, 3000, 1), Suction).Kind);
        Assert.Equal(HeardKind.Noise, hearing.Parts.Recogniser.Hear(FanNoise.Alone(1, 20, 1), Suction).Kind);
    }

    [Fact]
    public void Without_the_model_one_line_says_what_to_install()
    {
        var missing = Assert.Throws<VoicePartMissingException>(() => (AcousticModel.Installed with { Folder = "/nowhere" }).Check());

        Assert.Contains("apt-get install pocketsphinx-en-us", missing.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', missing.Message);
    }
}
