using System.Globalization;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;
using UnitsNet;
using UnitSystem = Assistant.Trade.Quantities.UnitSystem;

namespace Assistant.Dialogue.Judgements;

/// <summary>
/// Whether a nitrogen hold lost gas, corrected for the gas's temperature at both ends (<see cref="NitrogenHold"/>), and what leak it could
/// not have seen. A fall that shows is a leak however short the hold; none proves something only after a while.
/// </summary>
internal sealed record NitrogenHoldJudgement() : Judgement(
    "nitrogen-hold",
    ["holds", "leaking", "reads-high", "too-short", "uncorrected"],
    [FactCatalogue.TestPressure, FactCatalogue.TestGasTemperature, FactCatalogue.ElapsedTime])
{
    /// <summary>A hold without a fall says nothing before this. Common practice; overnight says more.</summary>
    private static readonly TimeSpan Shortest = TimeSpan.FromHours(1);

    public override Judged Judge(JudgementView view)
    {
        var pressures = view.Elapsed(FactCatalogue.TestPressure);
        var gas = view.Course(FactCatalogue.TestGasTemperature);
        if (pressures.Length < 2)
        {
            return new("too-short", ("time", new Amount(0, Dimension.Time)), ("least", Least));
        }

        if (gas.Length < 2)
        {
            return new("uncorrected");
        }

        var (set, read) = (Absolute(view, pressures[0].Reading), Absolute(view, pressures[^1].Reading));
        var (setAt, now) = (new CelsiusTemperature(gas[0].Reading.Canonical), new CelsiusTemperature(gas[^1].Reading.Canonical));
        var held = pressures[^1].Elapsed;
        var expected = NitrogenHold.Expected(set, setAt, now);
        var visible = NitrogenHold.SmallestVisibleFall(set, setAt, GaugeStep(view), ThermometerStep(view));
        var outcome = NitrogenHold.Judge(expected, read, visible) switch
        {
            NitrogenHoldVerdict.Leaking => "leaking",
            NitrogenHoldVerdict.ReadsHigh => "reads-high",
            _ => held < Shortest ? "too-short" : "holds",
        };
        Amount Gauge(AbsolutePressure pressure) => pressure.ToGauge(view.Facts.Barometer);
        return new(outcome, ("set", Gauge(set)), ("set_at", setAt), ("expected", Gauge(expected)), ("read", Gauge(read)), ("now_at", now), ("time", Time(held)), ("least", Least))
        {
            Because =
            [
                new("judged.nitrogen.from", ("set", Gauge(set)), ("set_at", setAt), ("expected", Gauge(expected)), ("now_at", now)),
                new("judged.nitrogen.visible", ("visible", Written(visible, view)), ("time", Time(held))),
            ],
        };
    }

    private static Amount Least => Time(Shortest);

    private static Amount Time(TimeSpan time) => new(time.TotalSeconds, Dimension.Time);

    private static AbsolutePressure Absolute(JudgementView view, Reading reading) => view.Facts.With(reading).Pressure(reading.Fact)!.Value;

    private static Pressure GaugeStep(JudgementView view) => IsUs(view) ? Pressure.FromPoundsForcePerSquareInch(1) : Pressure.FromBars(0.1);

    private static TemperatureDifference ThermometerStep(JudgementView view) => IsUs(view) ? TemperatureDifference.FromFahrenheitDegrees(1) : new(0.5);

    // A difference of pressures is said in psi, not psig.
    private static string Written(Pressure pressure, JudgementView view) => IsUs(view)
        ? pressure.PoundsForcePerSquareInch.ToString("0.#", CultureInfo.InvariantCulture) + " psi"
        : pressure.Bars.ToString("0.##", CultureInfo.InvariantCulture) + " bar";

    private static bool IsUs(JudgementView view) => view.Visit.Units == UnitSystem.Us;
}
