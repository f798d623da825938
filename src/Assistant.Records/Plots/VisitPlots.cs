using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;

namespace Assistant.Records.Plots;

/// <summary>The plots of a visit that its readings give, in the order a report shows them.</summary>
public static class VisitPlots
{
    public static ImmutableArray<Plot> Of(PlottedVisit visit, PhraseBook phrases) =>
        [.. new[] { CyclePlot.Of(visit, phrases), PullDownPlot.Of(visit, phrases), VacuumPlot.Of(visit, phrases), FloodingPlot.Of(visit, phrases) }.OfType<Plot>()];

    /// <inheritdoc cref="Of(PlottedVisit, PhraseBook)"/>
    /// <param name="events">The log of one visit, numbered.</param>
    public static ImmutableArray<Plot> Of(IReadOnlyList<VisitEvent> events, PhraseBook phrases) => Of(PlottedVisit.Of(events), phrases);
}
