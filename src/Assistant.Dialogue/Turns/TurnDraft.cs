using System.Collections.Immutable;
using System.Text;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>A turn while it is being made: the state so far, the events so far, what will be said.</summary>
internal sealed class TurnDraft(PhraseBook book, VisitState state, string by, DateTimeOffset at)
{
    private readonly ImmutableArray<VisitEvent>.Builder events = ImmutableArray.CreateBuilder<VisitEvent>();
    private readonly List<SaidPart> says = [];
    private readonly List<Phrase> because = [];
    private readonly List<SpokenCaution> cautions = [];

    /// <summary>The visit as the turn found it.</summary>
    public VisitState Opening { get; } = state;

    public VisitState State { get; private set; } = state;

    public string By => by;

    public DateTimeOffset At => at;

    public bool HasSaid => says.Count > 0;

    public ImmutableArray<VisitEvent> Events => events.ToImmutable();

    /// <summary>What was said so far, sentence by sentence.</summary>
    public ImmutableArray<SaidPart> Parts => [.. says];

    public ImmutableArray<Phrase> Because => [.. because];

    public ImmutableArray<SpokenCaution> Cautions => [.. cautions];

    /// <summary>All that was said so far, as one phrase.</summary>
    public Phrase Said
    {
        get
        {
            var (full, brief, aloud) = (new StringBuilder(), new StringBuilder(), new StringBuilder());
            foreach (var (_, _, phrase) in says)
            {
                full.Append(full.Length > 0 ? " " : "").Append(phrase.Full);
                brief.Append(brief.Length > 0 ? " " : "").Append(phrase.Brief);
                aloud.Append(aloud.Length > 0 ? " " : "").Append(phrase.Aloud);
            }

            return new(full.ToString(), brief.ToString()) { Spoken = says.Exists(s => s.Text.Spoken is not null) ? aloud.ToString() : null };
        }
    }

    public void Emit(VisitEvent happened)
    {
        var numbered = happened with { Number = State.Version + 1 };
        events.Add(numbered);
        State = State.Apply(numbered);
    }

    public void Say(string key, params ReadOnlySpan<ReasonPart> parts)
    {
        string? fact = null;
        foreach (var part in parts)
        {
            fact ??= part.Name == "fact" ? part.Word : null;
        }

        says.Add(new(key, fact, book.Say(key, State.Units, parts)));
    }

    public void Say(SaidPart part) => says.Add(part);

    public void Say(Phrase phrase) => says.Add(new("", null, phrase));

    public void AddReason(Phrase phrase) => because.Add(phrase);

    public void Give(SpokenCaution caution) => cautions.Add(caution);

    public bool Gives(string caution) => cautions.Exists(c => c.Code == caution);
}
