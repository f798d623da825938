using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Walks;

/// <summary>What a walk looks at when it decides where it stands: the visit and what the rule core makes of it.</summary>
public sealed record WalkView(WalkDefinition Walk, VisitState Visit, Assessment Assessment)
{
    public FactSet Facts => Visit.Facts;

    /// <summary>The leading fault where it is at least likely, otherwise null.</summary>
    public Finding? Leader => Assessment.Findings[0] is { Standing: Standing.Established or Standing.Likely } leading
        && leading.Code != FaultCode.NotEnoughEvidence ? leading : null;

    /// <summary>True where a stop that asks for the fact was skipped.</summary>
    public bool WasSkipped(Fact fact)
    {
        foreach (var (stop, _) in Visit.Skipped)
        {
            if (Walk.Find(stop)?.Asks == fact)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True where the fact ever had one of these words on this visit, even if it was read again since.</summary>
    public bool Ever(Fact fact, ImmutableArray<string> words) =>
        Visit.History.TryGetValue(fact, out var entries)
        && entries.Exists(entry => entry.Value is Observation seen && words.Contains(seen.Value));

    /// <summary>True where anything that can only be read at the place was read there on this visit.</summary>
    public bool WasAt(Place place)
    {
        foreach (var value in Facts.Values)
        {
            if (value.Fact.Place == place && Visit.History.TryGetValue(value.Fact, out var entries) && entries[^1].Place != "record")
            {
                return true;
            }
        }

        return false;
    }
}
