using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Judgements;

/// <summary>
/// Which repair the part, the parts at hand, the access and the site's leave for hot work allow: without a flame before with one, shut off
/// before made safe. Common practice.
/// </summary>
internal sealed record RepairPlanJudgement() : Judgement(
    "repair-plan", ["rebuild", "make-anew", "replace-flared", "braze", "isolate", "make-safe"], [FactCatalogue.HotWorkAllowed, FactCatalogue.Refrigerant])
{
    public override Judged Judge(JudgementView view)
    {
        var (part, parts) = (view.Visit.Chosen("repair-part"), view.Visit.Chosen("repair-parts"));
        if (view.Visit.Chosen("repair-access") is "poor-access")
        {
            return Later(view, "poor-access");
        }

        return (part, parts) switch
        {
            (null, _) => Later(view, "unknown"),
            ("take-apart-valve", "rebuild-kit") => Now("rebuild", "kit"),
            ("flare" or "stem-or-core", "rebuild-kit" or "whole-part") => Now("make-anew", "no-flame-needed"),
            ("take-apart-valve", "whole-part") when view.Facts.Word(FactCatalogue.HotWorkAllowed) != "yes" => Now("replace-flared", "whole-part", HotWork(view.Facts)),
            (_, "no-parts" or null) => Later(view, "no-parts"),
            _ when view.Facts.Is(FactCatalogue.HotWorkAllowed, "yes") => Flame(view.Facts),
            _ => Later(view, HotWork(view.Facts)),
        };
    }

    private static Judged Flame(FactSet facts)
    {
        var burns = RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant)) is { SafetyClass: SafetyClass.A2L or SafetyClass.A3 or SafetyClass.B2L };
        var judged = Now("braze", burns ? ["hot-work-allowed", "flammable"] : ["hot-work-allowed"]);
        return burns ? judged with { Cautions = [CautionCode.FlammableRefrigerant] } : judged;
    }

    private static Judged Later(JudgementView view, string reason) => view.Visit.Chosen("repair-shut-off") is "can-be-shut-off"
        ? Now("isolate", reason, "shut-off")
        : Now("make-safe", reason, "no-shut-off");

    private static string HotWork(FactSet facts) => facts.Is(FactCatalogue.HotWorkAllowed, "no") ? "hot-work-forbidden" : "hot-work-unknown";

    private static Judged Now(string outcome, params IEnumerable<string> reasons) =>
        new(outcome) { Because = [.. reasons.Select(r => new Reason("judged.repair-reason." + r))] };
}
