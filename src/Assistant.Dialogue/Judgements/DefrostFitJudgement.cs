using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Judgements;

/// <summary>Whether the defrosts suit the room: a freezer usually has three or four a day of 20 to 45 minutes, ended by the coil's temperature. Common practice.</summary>
internal sealed record DefrostFitJudgement() : Judgement("defrost-fit", ["usual", "too-few", "too-many", "too-short", "too-long", "unknown"], [FactCatalogue.Application])
{
    public override Judged Judge(JudgementView view)
    {
        if (view.Visit.Chosen("defrosts-a-day") is not { } count)
        {
            return new("unknown");
        }

        var length = view.Visit.Chosen("defrost-length") ?? "twenty-to-forty-five";
        var isFreezer = view.Facts.Is(FactCatalogue.Application, "freezer");
        var outcome = (count, length) switch
        {
            ("no-defrosts" or "one-or-two", _) when isFreezer => "too-few",
            ("five-or-more", _) => "too-many",
            ("no-defrosts", _) => "usual",
            (_, "under-twenty") when isFreezer => "too-short",
            (_, "over-forty-five") => "too-long",
            _ => "usual",
        };
        return new(outcome, ("count", count), ("length", length));
    }
}
