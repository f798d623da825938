using System.Collections.Immutable;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Judgements;

/// <summary>Which of the places searched sniffed, by what was chosen at each.</summary>
internal sealed record LeakAreasJudgement() : Judgement("leak-areas", ["some", "none"], [])
{
    private const string Sniffs = "sniffs";

    // The places in the order of the search, by the names of their choices.
    private static readonly ImmutableArray<string> Areas =
    [
        "leak-condenser", "leak-receiver", "leak-stems", "leak-flares", "leak-schrader", "leak-capillaries", "leak-drier", "leak-compressor",
        "leak-coil", "leak-distributor", "leak-valve", "leak-lines",
    ];

    public override Judged Judge(JudgementView view)
    {
        var searched = Areas.Where(a => view.Visit.Chosen(a) is not null).ToList();
        var suspects = searched.Where(a => view.Visit.Chosen(a) == Sniffs).ToList();
        return new(suspects.Count > 0 ? "some" : "none")
        {
            Because =
            [
                .. suspects.Select(a => new Reason("judged.leak-area.suspect", ("area", a))),
                .. searched.Except(suspects).Select(a => new Reason("judged.leak-area.clear", ("area", a))),
            ],
        };
    }
}
