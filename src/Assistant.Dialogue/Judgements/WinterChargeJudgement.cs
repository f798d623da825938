using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Rules;
using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Dialogue.Judgements;

/// <summary>
/// What must go in beyond a clear glass for the coldest design day (<see cref="WinterCharge"/>), and whether the receiver can take the whole
/// charge when it is pumped down (<see cref="LiquidFill"/>).
/// </summary>
internal sealed record WinterChargeJudgement() : Judgement(
    "winter-charge",
    ["add", "none-needed", "no-room", "no-flooding", "unknown"],
    [
        FactCatalogue.HeadPressureControl, FactCatalogue.HeadPressureControlSetting, FactCatalogue.SaturationBasis, FactCatalogue.DesignCondenserSplit,
        FactCatalogue.AmbientTemperature, FactCatalogue.ColdestDesignAmbient, FactCatalogue.CondenserVolume, FactCatalogue.ReceiverVolume, FactCatalogue.FullCharge, FactCatalogue.Refrigerant,
    ])
{
    // Less than this no scale of the trade shows.
    private static readonly Mass Nothing = Mass.FromOunces(1);

    public override Judged Judge(JudgementView view)
    {
        var facts = view.Facts;
        if (facts.Word(FactCatalogue.HeadPressureControl) is "none" or "fan-cycling")
        {
            return new("no-flooding");
        }

        if (RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant)) is not { } refrigerant
            || HeldHead.Of(facts, refrigerant) is not { } held
            || facts.Difference(FactCatalogue.DesignCondenserSplit) is not { } split
            || facts.Temperature(FactCatalogue.AmbientTemperature) is not { } today
            || facts.Temperature(FactCatalogue.ColdestDesignAmbient) is not { } coldest
            || facts.Find(FactCatalogue.CondenserVolume) is not Reading condenser
            || WinterCharge.Of(refrigerant, held, split, today, coldest, Volume.FromCubicMeters(condenser.Canonical)) is not { } winter)
        {
            return new("unknown");
        }

        Reason from = new(
            "judged.winter.from",
            ("today", Amount.Ratio(winter.FloodedToday)), ("ambient", today), ("cold", Amount.Ratio(winter.FloodedColdest)), ("coldest", coldest), ("held", held));
        if (winter.Extra < Nothing)
        {
            return new("none-needed", ("coldest", coldest)) { Because = [from] };
        }

        var (outcome, receiver) = Receiver(facts, refrigerant, winter.Extra);
        return new(outcome, ("extra", new Amount(winter.Extra.Kilograms, Dimension.Mass)), ("coldest", coldest)) { Because = [from, receiver, new Reason("judged.winter.assumes")] };
    }

    private static (string Outcome, Reason Reason) Receiver(FactSet facts, Refrigerant refrigerant, Mass extra)
    {
        if (facts.Find(FactCatalogue.ReceiverVolume) is not Reading volume
            || facts.Find(FactCatalogue.FullCharge) is not Reading charge
            || LiquidFill.MostIn(Volume.FromCubicMeters(volume.Canonical), refrigerant, LiquidFill.Reference) is not { } most)
        {
            return ("add", new("judged.winter.receiver-unknown"));
        }

        var total = extra.Kilograms + charge.Canonical;
        return total > most.Kilograms
            ? ("no-room", new("judged.winter.receiver-over", ChargeTold.Part("total", total), ChargeTold.Part("most", most.Kilograms)))
            : ("add", new("judged.winter.receiver-fits", ChargeTold.Part("total", total), ChargeTold.Part("most", most.Kilograms)));
    }
}
