using System.Collections.Immutable;
using Assistant.Dialogue.Replies;

namespace Assistant.Dialogue.Questions;

/// <summary>The answer to a question asked in the middle of a walk.</summary>
/// <param name="Say">The answer itself; empty where something is missing for it.</param>
/// <param name="Because">The numbers and assumptions it rests on.</param>
/// <param name="Needs">The one thing that is missing, or null.</param>
public sealed record Answer(Phrase Say, ImmutableArray<Phrase> Because, Phrase? Needs)
{
    /// <summary>All of it as one phrase: in full with its reasons, in brief without them.</summary>
    public Phrase Whole => new(
        string.Join(' ', Parts(p => p.Full, Because)),
        string.Join(' ', Parts(p => p.Brief, [])));

    private IEnumerable<string> Parts(Func<Phrase, string> form, ImmutableArray<Phrase> because) =>
        new[] { Say }.Concat(because).Append(Needs ?? Phrase.Empty).Where(p => !p.IsEmpty).Select(form);
}
