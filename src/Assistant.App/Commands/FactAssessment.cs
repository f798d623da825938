using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Trade;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.App.Commands;

/// <summary>Reads one line's facts, has the rules assess them, and puts the answer into words.</summary>
internal sealed class FactAssessment(Understander understander, PhraseBook phrases, UnitSystem units)
{
    public AssessResult Of(AssessLine line)
    {
        var values = new Dictionary<Fact, FactValue>();
        var texts = new Dictionary<Fact, string>();
        var rejected = new List<AssessedRejection>();
        foreach (var (name, text) in line.Facts)
        {
            if (FactText.Read(understander, name, text, units, out var why) is { } value)
            {
                values[value.Fact] = value;
                texts[value.Fact] = text;
            }
            else
            {
                rejected.Add(new(name, text, phrases.Say(why, units).Full));
            }
        }

        var assessment = Assessor.Assess(FactSet.Of(values.Values));
        rejected.AddRange(assessment.Rejected.Select(r => new AssessedRejection(r.Value.Fact.Name, texts[r.Value.Fact], Said(r.Why))));
        return new(
            line.Id,
            [.. assessment.Findings.Select(f => new AssessedFault(Codes.Of(f.Code), Codes.Of(f.Standing), [.. f.Because.Select(Said)], [.. f.Against.Select(Said)]))],
            AssessedDerived.Of(assessment.Derived),
            [.. assessment.Cautions.Select(c => new AssessedCaution(Codes.Of(c), phrases.Say("caution." + Codes.Of(c), units).Full))],
            assessment.Next?.Name,
            rejected);
    }

    private string Said(Reason reason) => phrases.Say(reason, units).Full;
}
