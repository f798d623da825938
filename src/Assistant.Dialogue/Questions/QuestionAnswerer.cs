using System.Collections.Frozen;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Questions;

/// <summary>Answers the questions a technician asks in the middle of a walk. Pure: the sums answer, the phrase book words it.</summary>
public sealed class QuestionAnswerer(PhraseBook phrases)
{
    private static readonly FrozenDictionary<string, Func<Asked, Answer>> Questions = new Dictionary<string, Func<Asked, Answer>>(StringComparer.Ordinal)
    {
        ["saturation"] = SaturationQuestion.Answer,
        ["superheat"] = SuperheatQuestion.Answer,
        ["subcooling"] = SubcoolingQuestion.Answer,
        ["target"] = TargetQuestion.Answer,
        ["minimum-ambient"] = MinimumAmbientQuestion.Answer,
        ["vacuum-verdict"] = VacuumQuestion.Answer,
        ["cylinder"] = CylinderQuestion.Answer,
        ["convert"] = ConvertQuestion.Answer,
        ["leak-rate"] = LeakRateQuestion.Answer,
        ["standing-test"] = StandingTestQuestion.Answer,
        ["test-pressure"] = TestPressureQuestion.Answer,
        ["setpoint-guide"] = SetpointQuestion.Answer,
        ["winter-charge"] = WinterChargeQuestion.Answer,
        ["split"] = SplitQuestion.Answer,
        ["discharge-temperature"] = DischargeTemperatureQuestion.Answer,
        ["room-concentration"] = RoomConcentrationQuestion.Answer,
        ["pull-down"] = PullDownQuestion.Answer,
        ["condenser-volume"] = CondenserVolumeQuestion.Answer,
        ["recall"] = RecallQuestion.Answer,
        ["where-to-read"] = WhereQuestion.Answer,
        ["clearing-ice"] = IceQuestion.Answer,
        ["suspect"] = SuspectQuestion.Answer,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The questions that can be answered, in the contract's spelling.</summary>
    public static IEnumerable<string> Known => Questions.Keys;

    /// <summary>The answer on a visit, with its repeated readings; null where the message is no question that is known here.</summary>
    public Answer? Answer(Understood understood, VisitState state) => Answer(understood, state.Facts, state.Units, VisitCourse.Of(state), Asker.FactAt(state));

    /// <summary>The answer, or null where the message is no question that is known here.</summary>
    /// <param name="facts">What the visit knows; the question's own numbers go before it.</param>
    /// <param name="units">The site's, for bare numbers and for the answer.</param>
    /// <param name="course">Readings taken repeatedly; none where they are not kept.</param>
    /// <param name="wanted">What the visit asks for now, or null.</param>
    public Answer? Answer(Understood understood, FactSet facts, UnitSystem units, VisitCourse? course = null, Fact? wanted = null) =>
        understood.Question is { } question && Questions.TryGetValue(question, out var answer)
            ? answer(new(phrases, understood, facts, units, course ?? VisitCourse.None, wanted))
            : null;
}
