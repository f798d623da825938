using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Questions;

public sealed class QuestionAnswererTests
{
    [Theory]
    [InlineData("saturation")]
    [InlineData("superheat")]
    [InlineData("subcooling")]
    [InlineData("target")]
    [InlineData("minimum-ambient")]
    [InlineData("vacuum-verdict")]
    [InlineData("cylinder")]
    [InlineData("convert")]
    [InlineData("leak-rate")]
    [InlineData("standing-test")]
    [InlineData("setpoint-guide")]
    [InlineData("winter-charge")]
    [InlineData("split")]
    [InlineData("discharge-temperature")]
    [InlineData("room-concentration")]
    [InlineData("pull-down")]
    public void Every_question_answers_or_asks_for_one_thing_with_nothing_known(string question)
    {
        var answer = new Call(question).Answered();
        Assert.True(!answer.Say.IsEmpty || answer.Needs is { IsEmpty: false });
        Assert.NotEmpty(answer.Whole.Full);
        Assert.NotEmpty(answer.Whole.Brief);
    }

    [Fact]
    public void What_is_no_question_is_not_answered()
    {
        var answerer = new QuestionAnswerer(Call.Phrases);
        Assert.Null(answerer.Answer(Understood.Unknown, FactSet.Empty, UnitSystem.Us));
        Assert.Null(answerer.Answer(Understood.Unknown with { Question = "weather" }, FactSet.Empty, UnitSystem.Us));
    }

    [Fact]
    public void As_one_phrase_an_answer_gives_its_reasons_in_full_only()
    {
        var whole = new Call("saturation") { Refrigerant = "R448A" }.With(22, UnitOfMeasure.Psig).Answered().Whole;
        Assert.Contains("subcooling by bubble", whole.Full, StringComparison.Ordinal);
        Assert.DoesNotContain("subcooling", whole.Brief, StringComparison.Ordinal);
    }
}
