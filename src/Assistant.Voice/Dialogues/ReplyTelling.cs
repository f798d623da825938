using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Dialogues;

/// <summary>Tells a reply, in parts where its cautions take too long for one; none of them is lost, whatever comes between.</summary>
internal sealed class ReplyTelling(PhraseBook phrases)
{
    /// <param name="fresh">The state with nothing pending; cautions it has not said yet are said before the next question.</param>
    /// <param name="before">What is said before all else, or nothing.</param>
    public VoiceStep Tell(VoiceState fresh, Reply reply, string before = "")
    {
        var isAsking = ReplySpeech.Question(reply).Length > 0;
        var speech = ReplySpeech.Of(reply, phrases, fresh.Style, isAsking ? fresh.Unheard : [], before);
        return Said(fresh with { Asked = reply, Rest = speech.Rest }, speech.Now, speech.Unheard, waiting: isAsking ? [] : fresh.Unheard);
    }

    /// <summary>The next part.</summary>
    public VoiceStep GoOn(VoiceState fresh)
    {
        var (now, unheard) = ReplySpeech.On(fresh.Unheard, fresh.Asked, phrases, fresh.Style);
        return Said(fresh, now, unheard, waiting: []);
    }

    private static VoiceStep Said(VoiceState fresh, string now, ImmutableArray<string> unheard, ImmutableArray<string> waiting) =>
        new(fresh with { Phase = unheard.IsEmpty ? VoicePhase.Answer : VoicePhase.GoingOn, Unheard = unheard.AddRange(waiting), Last = now }, now);
}
