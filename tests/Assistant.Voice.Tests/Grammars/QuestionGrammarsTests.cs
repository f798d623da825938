using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Grammars;
using Assistant.Voice.Hearing;
using Assistant.Voice.Scoring.Kit;

namespace Assistant.Voice.Tests.Grammars;

[Collection(HearingCollection.Name)]
public sealed class QuestionGrammarsTests(HearingParts hearing)
{
    [Theory]
    [InlineData("suction_pressure", "psi", "pounds", "vacuum", "seventeen")]
    [InlineData("box_temperature", "degrees", "fahrenheit", "minus", "forty")]
    [InlineData("compressor_current", "amps", "point", "eight", "stop")]
    [InlineData("condenser_coil", "dirty", "clean", "snowed", "skip")]
    public void A_question_listens_for_its_numbers_units_choices_and_the_commands(string fact, params string[] words)
    {
        var grammar = hearing.Parts.Grammars.For(FactCatalogue.Find(fact)!, [], UnitSystem.Us);

        Assert.Subset(grammar.Words.ToHashSet(), words.ToHashSet());
    }

    [Fact]
    public void Of_the_general_dictionary_only_what_the_files_can_ask_for_is_kept_and_no_phrase_is_lost_by_it()
    {
        var all = PronunciationDictionary.Load(VoiceParts.File("dialogs/voice/pronunciations.yaml"), File.ReadLines(AcousticModel.Installed.Dictionary));
        var whole = new QuestionGrammars(hearing.Parts.LexiconPhrases, hearing.Parts.Plan, all, hearing.Parts.Understander, hearing.Parts.Walks);
        foreach (var units in Enum.GetValues<UnitSystem>())
        {
            Assert.Equal(whole.Everything(units).Expansion, hearing.Parts.Grammars.Everything(units).Expansion);
            Assert.All(FactCatalogue.All, f => Assert.Equal(whole.For(f, [], units).Expansion, hearing.Parts.Grammars.For(f, [], units).Expansion));
        }

        Assert.True(all.Knows("zebra"));
        Assert.False(hearing.Parts.Sounds.Knows("zebra"));
        Assert.Equal(whole.Vocabulary.Order(StringComparer.Ordinal), hearing.Parts.Grammars.Vocabulary.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_question_does_not_listen_for_another_questions_units()
    {
        var grammar = hearing.Parts.Grammars.For(FactCatalogue.CompressorCurrent, [], UnitSystem.Us);

        Assert.DoesNotContain("psi", grammar.Words);
        Assert.DoesNotContain("fahrenheit", grammar.Words);
    }

    [Fact]
    public void The_units_a_reply_names_are_the_ones_listened_for()
    {
        var grammar = hearing.Parts.Grammars.For(FactCatalogue.SuctionPressure, ["bar"], UnitSystem.Metric);

        Assert.Contains("bar", grammar.Words);
        Assert.DoesNotContain("psi", grammar.Words);
    }

    [Fact]
    public void Every_fact_has_a_grammar_whose_words_all_have_a_pronunciation()
    {
        foreach (var fact in FactCatalogue.All)
        {
            foreach (var units in Enum.GetValues<UnitSystem>())
            {
                var grammar = hearing.Parts.Grammars.For(fact, [], units);

                Assert.All(grammar.Words, word => Assert.True(hearing.Parts.Sounds.Knows(word), $"{fact}: {word}"));
            }
        }
    }

    [Fact]
    public void Every_choice_of_every_fact_can_be_heard()
    {
        foreach (var fact in FactCatalogue.All.Where(f => !f.IsQuantity && f != FactCatalogue.Refrigerant))
        {
            var phrases = hearing.Parts.Grammars.For(fact, [], UnitSystem.Us).Expansion.Split(['(', ')', '|'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
            var understood = phrases.Select(p => hearing.Parts.Grammars.ChoiceOf(fact, p, UnitSystem.Us)).OfType<string>().ToHashSet();

            Assert.Superset(fact.Choices.ToHashSet(), understood);
        }
    }

    [Theory]
    [InlineData("why")]
    [InlineData("repeat")]
    [InlineData("skip")]
    [InlineData("undo")]
    [InlineData("status")]
    [InlineData("pause")]
    [InlineData("resume")]
    [InlineData("help")]
    [InlineData("more")]
    [InlineData("done")]
    [InlineData("who")]
    [InlineData("watch")]
    [InlineData("unwatch")]
    [InlineData("leave")]
    [InlineData("handover")]
    [InlineData("emergency")]
    public void A_command_that_is_listened_for_means_the_same_to_the_understanding(string command)
    {
        var phrases = hearing.Parts.Grammars.Command.Expansion.Split(['(', ')', '|'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Where(p => hearing.Parts.Grammars.Command.MeaningOf(p) == "command:" + command).ToList();

        Assert.NotEmpty(phrases);
        Assert.All(phrases, p => Assert.Equal(command, hearing.Parts.Understander.Understand(p, new UnderstandingContext(null, UnitSystem.Us)).Command));
    }
}
