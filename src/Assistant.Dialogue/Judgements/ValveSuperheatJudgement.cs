using System.Collections.Immutable;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Rules;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Judgements;

/// <summary>
/// The superheat at the bulb against its target (<see cref="SuperheatTarget"/>), and what the readings of this passage tell: in range, which way to
/// turn and how far, hunting, or a valve that does not answer. Small steps, a full turn at most at a time: common practice.
/// </summary>
internal sealed record ValveSuperheatJudgement() : Judgement(
    "valve-superheat",
    ["in-range", "high", "low", "hunting", "no-answer", "negative", "unknown"],
    [
        FactCatalogue.SuctionLineTemperatureAtBulb, FactCatalogue.SuctionPressure, FactCatalogue.SuctionPressureAtEvaporator, FactCatalogue.Refrigerant,
        FactCatalogue.Application, FactCatalogue.DesignEvaporatorTd,
    ])
{
    // Beyond what gauge and clamp can be out together no superheat is below zero.
    private static readonly TemperatureDifference InstrumentError = new(-2);

    // Swings of that size, up and down again, are the valve and not the reading. Common practice.
    private static readonly TemperatureDifference Swing = TemperatureDifference.FromFahrenheitDegrees(5);

    // Further off than this half a turn, otherwise a quarter. Common practice.
    private static readonly TemperatureDifference Far = TemperatureDifference.FromFahrenheitDegrees(10);

    // A turn that moves the superheat by less has not moved the valve.
    private static readonly TemperatureDifference Moved = TemperatureDifference.FromFahrenheitDegrees(1);

    // After so many turns without an answer it is not the setting.
    private const int MostUnanswered = 3;

    public override Judged Judge(JudgementView view)
    {
        var course = Course(view);
        if (course.IsEmpty || view.Facts.Word(FactCatalogue.Application) is not { } application)
        {
            return new("unknown");
        }

        var now = course[^1];
        if (now < InstrumentError)
        {
            return new("negative", ("superheat", now));
        }

        var target = SuperheatTarget.AtEvaporator(application == "freezer", view.Facts.Difference(FactCatalogue.DesignEvaporatorTd));
        var (isLow, isHigh) = (Rounding.IsUnder(now, target.Low), Rounding.IsOver(now, target.High));
        var outcome = Hunts(course) ? "hunting"
            : !isLow && !isHigh ? "in-range"
            : Unanswered(course) ? "no-answer"
            : isHigh ? "high" : "low";
        var off = isHigh ? now.Kelvins - target.High.Kelvins : target.Low.Kelvins - now.Kelvins;
        ReasonPart turn = ("turn", off > Far.Kelvins ? "half-turn" : "quarter-turn");
        return new(outcome, ("superheat", now), ("low", target.Low), ("high", target.High), turn)
        {
            Because = [.. From(view)],
            Cautions = isLow ? [CautionCode.LiquidRefrigerant] : [],
        };
    }

    // Each temperature at the bulb with the pressure read before it on this passage.
    private static ImmutableArray<TemperatureDifference> Course(JudgementView view)
    {
        if (RefrigerantLibrary.Find(view.Facts.Word(FactCatalogue.Refrigerant)) is not { } refrigerant)
        {
            return [];
        }

        var begun = view.Visit.Run?.StartedBy ?? 0;
        var bulbs = Entries(view, FactCatalogue.SuctionLineTemperatureAtBulb).Where(e => e.Number > begun);
        var pressures = Entries(view, FactCatalogue.SuctionPressureAtEvaporator).Concat(Entries(view, FactCatalogue.SuctionPressure)).ToList();
        return
        [
            .. from bulb in bulbs
               let pressure = pressures.Where(p => p.Number < bulb.Number || p.At == bulb.At).MaxBy(p => p.Number)
               where pressure.Reading is not null
               let superheat = Superheat.Of(new(bulb.Reading.Canonical), new GaugePressure(pressure.Reading.Canonical * 1000).ToAbsolute(view.Facts.Barometer), refrigerant)
               where superheat is not null
               select superheat.Value,
        ];
    }

    private static IEnumerable<(int Number, DateTimeOffset At, Reading Reading)> Entries(JudgementView view, Fact fact) =>
        view.Visit.History.GetValueOrDefault(fact, []).Where(e => e.Value is Reading).Select(e => (e.Number, e.At, (Reading)e.Value!));

    // Up and down again, or down and up, each time by more than a reading can be out.
    private static bool Hunts(ImmutableArray<TemperatureDifference> course)
    {
        if (course.Length < 4)
        {
            return false;
        }

        var steps = course.Zip(course.Skip(1), (a, b) => b.Kelvins - a.Kelvins).TakeLast(3).ToList();
        return steps.TrueForAll(s => Math.Abs(s) > Swing.Kelvins) && steps[0] * steps[1] < 0 && steps[1] * steps[2] < 0;
    }

    private static bool Unanswered(ImmutableArray<TemperatureDifference> course) =>
        course.Length > MostUnanswered && course.Zip(course.Skip(1), (a, b) => Math.Abs(b.Kelvins - a.Kelvins)).TakeLast(MostUnanswered).All(step => step < Moved.Kelvins);

    private static IEnumerable<Reason> From(JudgementView view)
    {
        yield return new("judged.valve.source");
        if (!view.Facts.Has(FactCatalogue.SuctionPressureAtEvaporator))
        {
            yield return new("judged.valve.far-gauge");
        }
    }
}
