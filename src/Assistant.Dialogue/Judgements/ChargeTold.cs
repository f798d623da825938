using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Judgements;

/// <summary>What the charge is by the plate and by the cylinders' account, kg.</summary>
internal static class ChargeTold
{
    public static double? Full(JudgementView view) => (view.Facts.Find(FactCatalogue.FullCharge) as Reading)?.Canonical;

    /// <summary>What went in on this visit less what came out: by the cylinders, else as it was said.</summary>
    public static double Added(JudgementView view)
    {
        var desk = view.Visit.Cylinders;
        return desk.Uses.Any()
            ? Math.Max(0, (desk.Charged - desk.Recovered).Value / 1000.0)
            : (view.Facts.Find(FactCatalogue.ChargeAdded) as Reading)?.Canonical ?? 0;
    }

    /// <summary>True after a vacuum: nothing is left in the system that is not weighed in.</summary>
    public static bool IsByWeight(JudgementView view) => view.Visit.Runs.Latest("vacuum") is { FinishedBy: not null };

    /// <summary>True where it came out so before on this passage and nothing was poured since: then no more goes in.</summary>
    public static bool IsLeftAt(JudgementView view, string outcome) =>
        view.Visit.Run?.Marks.LastOrDefault(m => m.Kind == StopMarkKind.Judged && m.Word == outcome) is { } said && !view.Visit.Cylinders.Uses.Any(u => u.Number > said.Number);

    public static ReasonPart Part(string name, double kilograms) => (name, new Amount(kilograms, Dimension.Mass));
}
