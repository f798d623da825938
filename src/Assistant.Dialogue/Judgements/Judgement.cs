using System.Collections.Immutable;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Judgements;

/// <summary>
/// A named judgement of a walk: pure, over the facts and the course of what was read. Its outcome is one of a declared list, and the
/// sentence that says it is the phrase <c>judged.NAME.OUTCOME</c>.
/// </summary>
/// <param name="Name">kebab-case, as walks name it.</param>
/// <param name="Outcomes">Every outcome it can have; one of them says that there is too little to tell.</param>
/// <param name="Uses">The facts it looks at.</param>
public abstract record Judgement(string Name, ImmutableArray<string> Outcomes, ImmutableArray<Fact> Uses)
{
    public abstract Judged Judge(JudgementView view);

    /// <summary>The key of the sentence for an outcome.</summary>
    public string Phrase(string outcome) => $"judged.{Name}.{outcome}";
}

/// <summary>What a judgement came to.</summary>
/// <param name="Parts">The numbers and words of its sentence.</param>
public sealed record Judged(string Outcome, params ImmutableArray<ReasonPart> Parts)
{
    /// <summary>What it rests on, said after it.</summary>
    public ImmutableArray<Reason> Because { get; init; } = [];

    /// <summary>Given right with it.</summary>
    public ImmutableArray<CautionCode> Cautions { get; init; } = [];

    /// <summary>After what time the technician is reminded to read again, or null.</summary>
    public TimeSpan? Remind { get; init; }
}
