using System.Collections.Immutable;
using System.Globalization;
using Assistant.Trade.Rules;

namespace Assistant.Trade.Regulations;

/// <summary>One thing a rule asks or says, with the numbers it rests on, where it stands and how far its figures can be trusted.</summary>
/// <param name="Paragraph">The place within the rule.</param>
/// <param name="Due">The last day on which it is still in time; null where it is no matter of a date.</param>
public sealed record RegulationFinding(RegulationCode Code, Regulation Rule, string Paragraph, DateOnly? Due, params ImmutableArray<ReasonPart> Parts)
{
    /// <summary>The phrase that ends every answer: check the current text and your authority.</summary>
    public const string ReminderKey = "regulation.check-the-current-text";

    /// <summary>The finding as a sentence: its key and its parts, with <c>due</c> where there is a date and <c>source</c> always.</summary>
    public Reason Says => new("regulation." + Codes.Of(Code), [.. Parts, .. DueParts(), ("source", Paragraph)]);

    /// <summary>The reminder as a sentence, with the source, since when it holds, the day it was read, and whether it was read or is recalled.</summary>
    public Reason Reminder => new(
        ReminderKey,
        ("source", Rule.Source),
        ("from", Day(Rule.ValidFrom)),
        ("read", Day(Rule.DateRead)),
        ("basis", Rule.UnderRevision ? "under-revision" : Rule.Basis == SourceBasis.FromMemory ? "from-memory" : "published"));

    internal static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private ImmutableArray<ReasonPart> DueParts() => Due is { } due ? [("due", Day(due))] : [];
}
