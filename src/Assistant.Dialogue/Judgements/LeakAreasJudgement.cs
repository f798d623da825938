using System.Collections.Immutable;
using System.Globalization;
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

    // Those that were clear are counted: a dozen lines would push the suspects out of sight.
    private static Reason Clear(int count, bool isRest) =>
        new(isRest ? "judged.leak-area.clear-rest" : "judged.leak-area.clear-all", ("count", count.ToString(CultureInfo.InvariantCulture)));

    public override Judged Judge(JudgementView view)
    {
        var searched = Areas.Where(a => view.Visit.Chosen(a) is not null).ToList();
        var suspects = searched.Where(a => view.Visit.Chosen(a) == Sniffs).ToList();
        return new(suspects.Count > 0 ? "some" : "none")
        {
            Because =
            [
                .. suspects.Select(a => new Reason("judged.leak-area.suspect", ("area", a))),
                .. searched.Count > suspects.Count ? new[] { Clear(searched.Count - suspects.Count, suspects.Count > 0) } : [],
            ],
        };
    }
}
