using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Sums;
using UnitsNet;
using UnitSystem = Assistant.Trade.Quantities.UnitSystem;

namespace Assistant.Dialogue.Questions;

/// <summary>"Did the nitrogen test pass": the hold with its temperatures; or a system at rest against its refrigerant.</summary>
internal static class StandingTestQuestion
{
    private static readonly TemperatureDifference InstrumentError = TemperatureDifference.FromFahrenheitDegrees(2);

    public static Answer Answer(Asked asked) =>
        asked.Arguments.About == FactCatalogue.StandingPressure || (asked.Facts.Has(FactCatalogue.StandingPressure) && !asked.Facts.Has(FactCatalogue.TestPressure) && asked.Said(Dimension.Pressure) is null)
            ? AtRest(asked)
            : Hold(asked);

    private static Answer Hold(Asked asked)
    {
        var set = asked.Course.TestPressureSet ?? asked.Facts.Find(FactCatalogue.TestPressure) as Reading;
        var gas = asked.Course.TestGasSet is { } first ? new CelsiusTemperature(first.Canonical) : asked.Facts.Temperature(FactCatalogue.TestGasTemperature);
        var now = asked.Said(Dimension.Pressure) is not null ? asked.Pressure()
            : asked.Course.TestPressureSet is not null ? asked.Facts.Pressure(FactCatalogue.TestPressure) : null;
        if (set is null || now is not { } read)
        {
            return new(Phrase.Empty, [], asked.Say(set is null ? "answer.standing.needs-set" : "answer.standing.needs-now"));
        }

        if (gas is not { } setAt || Now(asked, setAt) is not { } at)
        {
            return asked.Needs(FactCatalogue.TestGasTemperature);
        }

        var pressureSet = FactSet.Of(asked.Facts.Values.Where(v => v.Fact == FactCatalogue.Altitude).Append(new Reading(FactCatalogue.TestPressure, set.Value, set.Unit))).Pressure(FactCatalogue.TestPressure)!.Value;
        var expected = NitrogenHold.Expected(pressureSet, setAt, at);
        var (gauge, thermometer) = asked.Units == UnitSystem.Us
            ? (Pressure.FromPoundsForcePerSquareInch(1), TemperatureDifference.FromFahrenheitDegrees(1))
            : (Pressure.FromBars(0.1), new TemperatureDifference(0.5));
        var visible = NitrogenHold.SmallestVisibleFall(pressureSet, setAt, gauge, thermometer);
        var key = NitrogenHold.Judge(expected, read, visible) switch
        {
            NitrogenHoldVerdict.Holds => "answer.standing.holds",
            NitrogenHoldVerdict.Leaking => "answer.standing.leaks",
            _ => "answer.standing.high",
        };
        return Asked.Because(
            asked.Say(key, ("expected", asked.Gauge(expected)), ("read", asked.Gauge(read))),
            asked.Say("answer.standing.from", ("set", asked.Gauge(pressureSet)), ("set_at", setAt), ("now_at", at)),
            asked.Say("answer.standing.visible", ("visible", Written(visible, asked.Units))));
    }

    // A temperature now, or a change since it was set: "ten degrees colder" is what a night does, so a bare change is taken as colder.
    private static CelsiusTemperature? Now(Asked asked, CelsiusTemperature setAt)
    {
        if (asked.Arguments.Numbers.Any(n => n.Unit?.Dimension == Dimension.TemperatureDifference) && asked.Said(Dimension.TemperatureDifference) is { } change)
        {
            return setAt - new TemperatureDifference(change);
        }

        return asked.Said(Dimension.Temperature) is { } degrees ? new(degrees)
            : asked.Course.TestGasSet is not null ? asked.Facts.Temperature(FactCatalogue.TestGasTemperature)
            : asked.Facts.Temperature(FactCatalogue.AmbientTemperature);
    }

    private static Answer AtRest(Asked asked)
    {
        if (asked.Refrigerant is not { } refrigerant)
        {
            return asked.NeedsRefrigerant();
        }

        if (asked.Pressure(FactCatalogue.StandingPressure) is not { } read)
        {
            return asked.Needs(FactCatalogue.StandingPressure);
        }

        if (asked.Temperature(FactCatalogue.AmbientTemperature) is not { } coldest)
        {
            return asked.Needs(FactCatalogue.AmbientTemperature);
        }

        return StandingPressure.Judge(refrigerant, read, coldest, InstrumentError) is { } verdict && StandingPressure.Expected(refrigerant, coldest) is { } expected
            ? AtRest(asked, refrigerant, verdict, read, expected, coldest)
            : asked.OutOfTable(refrigerant);
    }

    private static Answer AtRest(Asked asked, Refrigerant refrigerant, StandingVerdict verdict, AbsolutePressure read, AbsolutePressure expected, CelsiusTemperature coldest)
    {
        var key = verdict switch
        {
            StandingVerdict.Below => "answer.standing.below",
            StandingVerdict.Above => "answer.standing.above",
            _ => "answer.standing.saturated",
        };
        return Asked.Because(
            asked.Say(key, ("read", asked.Gauge(read)), ("expected", asked.Gauge(expected))),
            asked.Say("answer.standing.at-rest", ("refrigerant", refrigerant.Designation), ("coldest", coldest)));
    }

    private static string Written(Pressure pressure, UnitSystem units) => units == UnitSystem.Us
        ? pressure.PoundsForcePerSquareInch.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture) + " psi"
        : pressure.Bars.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) + " bar";
}
