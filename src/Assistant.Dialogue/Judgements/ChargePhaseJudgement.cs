using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Refrigerants;

namespace Assistant.Dialogue.Judgements;

/// <summary>How the refrigerant must leave the cylinder: a blend as liquid, or what is left in the cylinder is no longer that blend.</summary>
internal sealed record ChargePhaseJudgement() : Judgement("charge-phase", ["liquid", "either", "unknown"], [FactCatalogue.Refrigerant])
{
    public override Judged Judge(JudgementView view) => RefrigerantLibrary.Find(view.Facts.Word(FactCatalogue.Refrigerant)) switch
    {
        null => new("unknown"),
        { IsBlend: true } blend => new("liquid", ("refrigerant", blend.Designation)) { Cautions = [CautionCode.LiquidToSuction] },
        var pure => new("either", ("refrigerant", pure.Designation)) { Cautions = [CautionCode.LiquidToSuction] },
    };
}
