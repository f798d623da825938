using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Judgements;

/// <summary>What the goods' own temperature tells: cold enough, too warm for food, or softening in a freezer (<see cref="StoredGoods"/>).</summary>
internal sealed record ProductJudgement() : Judgement("product", ["cold", "warm", "thawing", "unknown"], [FactCatalogue.ProductTemperature, FactCatalogue.Application])
{
    public override Judged Judge(JudgementView view)
    {
        if (view.Facts.Temperature(FactCatalogue.ProductTemperature) is not { } product)
        {
            return new("unknown");
        }

        var isFreezer = view.Facts.Is(FactCatalogue.Application, "freezer");
        var limit = isFreezer ? StoredGoods.Softens : StoredGoods.ColdFood;
        var outcome = Rounding.IsOver(product, StoredGoods.ColdFood) ? "warm" : isFreezer && Rounding.IsOver(product, StoredGoods.Softens) ? "thawing" : "cold";
        return new(outcome, ("product", product), ("limit", outcome == "warm" ? StoredGoods.ColdFood : limit))
        {
            Cautions = outcome == "cold" ? [] : [CautionCode.FoodSafety],
        };
    }
}
