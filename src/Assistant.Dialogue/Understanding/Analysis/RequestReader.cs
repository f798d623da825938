using System.Collections.Immutable;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Text;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Recognises a message that asks whoever is on site for a reading: its first words say so, and the rest is the reading's name.</summary>
internal sealed class RequestReader(Lexicon lexicon)
{
    /// <summary>A name stands no further behind the beginning.</summary>
    private const int FurthestName = 5;

    private const int LongestWords = 60;

    private readonly ItemReader items = new(lexicon);

    /// <summary>The wish, or null where the message is none.</summary>
    /// <param name="certain">True for what is a wish whatever else it could be; false for what is one where it is no question.</param>
    public RequestSaid? Read(Message message, bool certain)
    {
        var polite = lexicon.Commands.AfterPoliteness(message.Tokens);
        return From(message, 0, certain) ?? (polite > 0 ? From(message, polite, certain) : null);
    }

    private RequestSaid? From(Message message, int start, bool certain)
    {
        if (Opening(message.Tokens, start) is not var (length, opening))
        {
            return null;
        }

        var at = start + length;
        var end = WithoutBehind(message.Tokens, at, out var isAnew);
        if (certain == (opening == RequestOpening.May && !isAnew) || at >= end)
        {
            return null;
        }

        var words = message.Text[message.Tokens[at].Start..message.Tokens[end - 1].End];
        var facts = Facts(message, at, end);
        return facts is { IsEmpty: false } named ? new(named, words, opening == RequestOpening.Drop)
            : opening == RequestOpening.For && words.Length <= LongestWords && !words.Any(char.IsDigit) ? new([], words, false)
            : null;
    }

    private (int Length, RequestOpening Opening)? Opening(IReadOnlyList<Token> tokens, int start)
    {
        var longest = lexicon.Requests.Openings.LongestAt(tokens, start, out var found);
        for (var name = start + 1; start < tokens.Count && lexicon.Requests.BeforeName.Contains(tokens[start].Word) && name < Math.Min(tokens.Count, start + FurthestName); name++)
        {
            var named = tokens.ToList();
            named[name] = named[name] with { Word = lexicon.Commands.NameSlot };
            if (tokens[name].Kind == TokenKind.Word && lexicon.Requests.Openings.LongestAt(named, start, out var meant) is var length && length > longest)
            {
                (longest, found) = (length, meant);
            }
        }

        return longest == 0 ? null : (longest, found[0]);
    }

    // "the head again please": what stands behind the name is cut off; "again" says that it is no question about what was read.
    private int WithoutBehind(IReadOnlyList<Token> tokens, int start, out bool isAnew)
    {
        var end = tokens.Count;
        isAnew = false;
        for (var at = end - 1; at > start; at--)
        {
            if (tokens[at].EndsClause)
            {
                end = at == end - 1 ? at : end;
            }
            else if (lexicon.Requests.Behind.LongestAt(tokens, at, out _) is var length and > 0 && at + length == end)
            {
                (end, isAnew) = (at, true);
            }
        }

        return end;
    }

    private ImmutableArray<Fact>? Facts(Message message, int start, int end)
    {
        var facts = ImmutableArray.CreateBuilder<Fact>();
        foreach (var item in items.Read(message, start, end, null))
        {
            if (item.Facts.Count > 0)
            {
                facts.Add((item.Facts.FirstOrDefault(f => !f.Loose) ?? item.Facts[0]).Fact);
            }
            else if (item.Place is { } place && facts.Count > 0)
            {
                facts[^1] = place.GetValueOrDefault(facts[^1], facts[^1]);
            }
            else if (!item.IsPlain && !item.IsFiller && item.Mark is not (ItemMark.And or ItemMark.Pause))
            {
                return null;
            }
        }

        return [.. facts.Distinct()];
    }
}
