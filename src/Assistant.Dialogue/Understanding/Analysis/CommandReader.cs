using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Recognises a message that as a whole is a command, whatever politeness stands around it.</summary>
internal sealed class CommandReader(Lexicon lexicon)
{
    /// <summary>No command is longer.</summary>
    private const int MostWords = 16;

    private const int LongestName = 3;

    public string? Read(Message message) => Read(message, 0, message.Tokens.Count) ?? ClauseByClause(message);

    // "okay I'm back, go ahead": every clause is the same command.
    private string? ClauseByClause(Message message)
    {
        string? all = null;
        for (var start = 0; start < message.Tokens.Count;)
        {
            var end = start;
            while (end < message.Tokens.Count && !message.Tokens[end].EndsClause)
            {
                end++;
            }

            if (end > start)
            {
                if (Read(message, start, end) is not { } command || (all is not null && all != command))
                {
                    return null;
                }

                all = command;
            }

            start = end + 1;
        }

        return all;
    }

    private string? Read(Message message, int start, int end)
    {
        Span<int> words = stackalloc int[MostWords];
        var count = 0;
        for (var i = start; i < end;)
        {
            var token = message.Tokens[i];
            if (token.EndsClause)
            {
                i++;
                continue;
            }

            if (count == MostWords)
            {
                return null;
            }

            i = Word(message, i, out words[count++]);
        }

        return count == 0 ? null : Exactly(words[..count]) ?? WithoutPoliteness(words[..count]);
    }

    private int Word(Message message, int at, out int word)
    {
        var token = message.Tokens[at];
        if (token.Kind == TokenKind.Number || lexicon.Numbers.Vocabulary.Begins(token))
        {
            var number = lexicon.NumberReader.Read(message.Text, message.Tokens, at, _ => false);
            if (number.Found)
            {
                word = number is { InDigits: false, Value: 1 } ? token.Word : lexicon.Commands.NumberSlot;
                return number.End;
            }
        }

        word = token.Word;
        return at + 1;
    }

    private string? Exactly(ReadOnlySpan<int> words)
    {
        if (lexicon.Commands.Commands.Exactly(words) is [var command, ..])
        {
            return command;
        }

        Span<int> named = stackalloc int[MostWords];
        for (var length = 1; length <= LongestName && length < words.Length; length++)
        {
            var kept = words[..^length];
            kept.CopyTo(named);
            named[kept.Length] = lexicon.Commands.NameSlot;
            if (lexicon.Commands.Commands.Exactly(named[..(kept.Length + 1)]) is [var handed, ..])
            {
                return handed;
            }
        }

        return null;
    }

    // "ok can you say that again please": strips from both ends, one phrase at a time, and looks after each.
    private string? WithoutPoliteness(ReadOnlySpan<int> words)
    {
        while (words.Length > 1)
        {
            if (PoliteStart(words) is var start and > 0)
            {
                words = words[start..];
            }
            else if (PoliteEnd(words) is var end and > 0)
            {
                words = words[..^end];
            }
            else
            {
                return null;
            }

            if (words.Length > 0 && Exactly(words) is { } command)
            {
                return command;
            }
        }

        return null;
    }

    private int PoliteStart(ReadOnlySpan<int> words)
    {
        for (var length = Math.Min(4, words.Length); length > 0; length--)
        {
            if (lexicon.Commands.PolitePhrases.Exactly(words[..length]).Count > 0)
            {
                return length;
            }
        }

        return 0;
    }

    private int PoliteEnd(ReadOnlySpan<int> words)
    {
        for (var length = Math.Min(4, words.Length); length > 0; length--)
        {
            if (lexicon.Commands.PolitePhrases.Exactly(words[^length..]).Count > 0)
            {
                return length;
            }
        }

        return 0;
    }
}
