using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Questions;

/// <summary>"Is that vacuum good enough": one reading against the target, or the whole course after isolation.</summary>
internal static class VacuumQuestion
{
    // Where nothing is known of the place, water is reckoned at room temperature.
    private static readonly CelsiusTemperature Room = new(20);

    // A gauge that stands within a quarter of the vapour pressure of water or ice stands on it.
    private const double NearWater = 0.25;

    public static Answer Answer(Asked asked)
    {
        if ((asked.Said(Dimension.Vacuum) ?? asked.Known(FactCatalogue.VacuumLevel, Dimension.Vacuum)) is not { } pascals)
        {
            return asked.Needs(FactCatalogue.VacuumLevel);
        }

        var pressure = new AbsolutePressure(pascals);
        var place = asked.Facts.Temperature(FactCatalogue.AmbientTemperature);
        var verdict = asked.Said(Dimension.Vacuum) is null && asked.Course.Vacuum.Length > 0
            ? VacuumDecay.Judge(asked.Course.Vacuum, place ?? Room)
            : VacuumVerdict.TooShort;
        var say = verdict switch
        {
            VacuumVerdict.Tight => asked.Say("answer.vacuum.tight", ("vacuum", Vacuum(pressure))),
            VacuumVerdict.Moisture => asked.Say("answer.vacuum.moisture", ("vacuum", Vacuum(pressure))),
            VacuumVerdict.Leak => asked.Say("answer.vacuum.leak", ("vacuum", Vacuum(pressure))),
            _ => OneReading(asked, pressure),
        };
        return Asked.Because(
            say,
            asked.Say("answer.vacuum.limits", ("target", Vacuum(VacuumDecay.Target)), ("ceiling", Vacuum(VacuumDecay.Ceiling)), ("time", new Amount(VacuumDecay.ShortestTest.Seconds, Dimension.Time))),
            Water(asked, pressure, place),
            place is { Degrees: < 0 } cold ? asked.Say("answer.vacuum.cold", ("place", cold), ("ice", Vacuum(WaterVapour.OverIce(cold)))) : null);
    }

    private static Phrase OneReading(Asked asked, AbsolutePressure pressure) =>
        pressure > VacuumDecay.Target ? asked.Say("answer.vacuum.not-yet", ("vacuum", Vacuum(pressure)), ("target", Vacuum(VacuumDecay.Target)))
        : asked.Say("answer.vacuum.isolate", ("vacuum", Vacuum(pressure)), ("ceiling", Vacuum(VacuumDecay.Ceiling)), ("time", new Amount(VacuumDecay.ShortestTest.Seconds, Dimension.Time)));

    private static Phrase? Water(Asked asked, AbsolutePressure pressure, CelsiusTemperature? place)
    {
        if (place is not { } temperature || pressure <= VacuumDecay.Target)
        {
            return null;
        }

        var water = WaterVapour.At(temperature);
        return Math.Abs((pressure.Pascals / water.Pascals) - 1) < NearWater
            ? asked.Say("answer.vacuum.water", ("place", temperature), ("water", Vacuum(water)))
            : null;
    }

    private static Amount Vacuum(AbsolutePressure pressure) => new(pressure.Pascals, Dimension.Vacuum);
}
