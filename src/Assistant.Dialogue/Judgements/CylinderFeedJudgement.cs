using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Sums;
using UnitsNet;
using Grams = Assistant.Trade.Ledgers.Grams;

namespace Assistant.Dialogue.Judgements;

/// <summary>
/// Whether the cylinder can feed the system: empty by its weight, cold by its temperature (<see cref="Cylinder"/>), or ready. A frozen bottle
/// that "is empty" is weighed first.
/// </summary>
internal sealed record CylinderFeedJudgement() : Judgement(
    "cylinder-feed",
    ["feeds", "cold", "empty", "unknown"],
    [FactCatalogue.CylinderWeight, FactCatalogue.CylinderTare, FactCatalogue.CylinderTemperature, FactCatalogue.Refrigerant, FactCatalogue.SuctionPressure])
{
    // What a hose and a scale can not tell from nothing: half a pound. Common practice.
    private static readonly Mass Rest = Mass.FromPounds(0.5);

    public override Judged Judge(JudgementView view)
    {
        if (Contents(view) is not { } net)
        {
            return new("unknown");
        }

        if (net < Rest)
        {
            return new("empty", ("net", new Amount(net.Kilograms, Dimension.Mass)));
        }

        var facts = view.Facts;
        if (facts.Temperature(FactCatalogue.CylinderTemperature) is not { } cylinder
            || RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant)) is not { } refrigerant
            || Cylinder.Pressure(refrigerant, cylinder) is not { } pressure)
        {
            return new("unknown");
        }

        // Under a vacuum and with no gauge read yet anything above the atmosphere feeds; what is still in the system stands as it was read last.
        var system = facts.Pressure(FactCatalogue.SuctionPressure) ?? (ChargeTold.IsByWeight(view) ? null : LastRead(view)) ?? facts.Barometer;
        var feeds = Cylinder.Feeds(pressure, system);
        return new(
            feeds ? "feeds" : "cold",
            ("net", new Amount(net.Kilograms, Dimension.Mass)),
            ("temperature", cylinder),
            ("pressure", pressure.ToGauge(facts.Barometer)),
            ("system", system.ToGauge(facts.Barometer)))
        {
            Cautions = feeds ? [] : [CautionCode.CylinderHeating],
        };
    }

    private static AbsolutePressure? LastRead(JudgementView view) =>
        view.Visit.History.TryGetValue(FactCatalogue.SuctionPressure, out var entries) && entries.FindLast(e => e.Value is Reading) is { Value: Reading last }
            ? view.Facts.With(last).Pressure(FactCatalogue.SuctionPressure)
            : null;

    private static Mass? Contents(JudgementView view)
    {
        if (view.Visit.Cylinders.Current is { BeforeGrams: { } gross, TareGrams: { } tare })
        {
            return new Grams(gross - tare).ToMass();
        }

        var weight = (view.Facts.Find(FactCatalogue.CylinderWeight) as Reading)?.Canonical;
        return weight is { } kilograms && view.Facts.Find(FactCatalogue.CylinderTare) is Reading empty ? Mass.FromKilograms(kilograms - empty.Canonical) : null;
    }
}
