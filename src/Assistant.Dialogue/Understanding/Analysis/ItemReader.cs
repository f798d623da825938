using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Numbers;
using Assistant.Dialogue.Understanding.Text;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Cuts a stretch of a message into items: at each place the longest thing that stands there.</summary>
internal sealed class ItemReader(Lexicon lexicon)
{
    private readonly NumberFinder numbers = new(lexicon);
    private readonly RefrigerantReader refrigerants = new(lexicon);

    public List<Item> Read(Message message, int start, int end, Fact? expected)
    {
        var items = new List<Item>(end - start);
        var inOut = ToldInAndOut(message.Tokens, start, end, expected);
        for (var at = start; at < end;)
        {
            // "suc 22": behind the name of a quantity a bare number is that quantity's, even where the refrigerant was asked.
            var item = Next(message, at, items is [.., { NamesQuantity: true }] && expected == FactCatalogue.Refrigerant ? null : expected, inOut);
            if (item.End > end)
            {
                item = new(at, at + 1) { Mark = ItemMark.Plain };
            }

            if (item.Place is not null && GoesOn(message.Tokens, item, items))
            {
                item = new(at, at + 1) { Counts = [CountWord.Going], Values = ValuesOf(message.Tokens[at]) };
            }

            items.Add(item);
            at = item.End;
        }

        return items;
    }

    // "both fans on coil is packed": the fans are on, and then comes the coil.
    private bool GoesOn(IReadOnlyList<Token> tokens, Item place, List<Item> items) =>
        items is [.., { Facts: [_, ..] names, NamesQuantity: false }] && names.All(n => lexicon.Values.Counted.Contains(n.Fact) || n.Fact == FactCatalogue.Compressor) && lexicon.Values.Counts.Exactly([tokens[place.Start].Word]).Contains(CountWord.Going);

    private IReadOnlyList<ValueWord> ValuesOf(Token token) => lexicon.Values.Values.Exactly([token.Word]);

    private Item Next(Message message, int at, Fact? expected, InOut inOut)
    {
        var tokens = message.Tokens;
        var token = tokens[at];
        switch (token.Kind)
        {
            case TokenKind.Pause:
                return new(at, at + 1) { Mark = ItemMark.Pause };
            case TokenKind.Stop or TokenKind.Question:
                return new(at, at + 1) { Mark = ItemMark.Stop };
            case TokenKind.Clock:
                return new(at, at + 1) { Mark = ItemMark.Clock };
            case TokenKind.Foreign or TokenKind.Code:
                return new(at, at + 1) { Mark = ItemMark.Stranger };
        }

        var phrase = Phrase(tokens, at, expected, inOut);
        if (phrase.Has(Cue.SignOpen))
        {
            return phrase;
        }

        // "I've got one oh five": the phrase "got one" ends where a longer number begins, and one is a number where a number was asked.
        if (phrase.End - at > 1 && !(phrase.NamesQuantity && lexicon.Filling.BeforeOne.Contains(tokens[phrase.End - 2].Word)) && lexicon.Numbers.Vocabulary.Begins(tokens[phrase.End - 1])
            && numbers.Find(message.Text, tokens, phrase.End - 1, inOut.Told) is { } cut
            && (cut.End > phrase.End || (phrase.YesNo is not null && expected is { IsQuantity: true })))
        {
            return new(at, at + 1) { Mark = ItemMark.Plain };
        }

        if (refrigerants.Read(message.Text, tokens, at) is { } named && (named.Name.Sure || expected == FactCatalogue.Refrigerant) && named.End >= phrase.End
            && !(expected?.Kind == FactKind.Current && !named.Name.Sure))
        {
            return new(at, named.End) { Refrigerant = named.Name };
        }

        if (PartOfWhole(message, at, expected) is { } part)
        {
            return part;
        }

        if (numbers.Find(message.Text, tokens, at, inOut.Told) is { } number && TakesNumber(tokens, at, number.End, phrase, expected))
        {
            return new(at, number.End) { Number = number.Number };
        }

        return phrase;
    }

    // "1 of 2 fans", "2 out of 3": how many of the things that are counted.
    private Item? PartOfWhole(Message message, int at, Fact? expected)
    {
        var tokens = message.Tokens;
        if (tokens[at].Kind != TokenKind.Number || lexicon.NumberReader.Read(message.Text, tokens, at, _ => false) is not { Found: true } part
            || lexicon.Values.Of.LongestAt(tokens, part.End, out _) is not (> 0 and var of) || part.End + of >= tokens.Count || tokens[part.End + of].Kind != TokenKind.Number
            || lexicon.NumberReader.Read(message.Text, tokens, part.End + of, _ => false) is not { Found: true } whole || part.Value > whole.Value
            || !(IsCounted(expected) || FanFollows(tokens, whole.End)))
        {
            return null;
        }

        return new(at, whole.End) { Counts = [part.Value == 0 ? CountWord.None : part.Value == whole.Value ? CountWord.All : CountWord.Some] };
    }

    // A phrase that reaches further than the number wins ("one of them", "half past"), and so does a count of fans.
    private bool TakesNumber(IReadOnlyList<Token> tokens, int at, int end, Item phrase, Fact? expected)
    {
        if (phrase.Counts.Count > 0 && phrase.End >= end)
        {
            return !(IsCounted(expected) || FanFollows(tokens, phrase.End));
        }

        return phrase.End <= end || phrase.IsPlain;
    }

    private bool IsCounted(Fact? fact) => fact is not null && lexicon.Values.Counted.Contains(fact);

    private bool FanFollows(IReadOnlyList<Token> tokens, int at)
    {
        for (var i = at; i < tokens.Count && i < at + 3; i++)
        {
            if (lexicon.Facts.Names.LongestAt(tokens, i, out var names) > 0 && names.Any(n => lexicon.Values.Counted.Contains(n.Fact)))
            {
                return true;
            }
        }

        return false;
    }

    private Item Phrase(IReadOnlyList<Token> tokens, int at, Fact? expected, InOut inOut)
    {
        if (inOut.FactAt(tokens, at, lexicon) is { } side)
        {
            return side;
        }

        var fact = lexicon.Facts.Names.LongestAt(tokens, at, out var facts);
        var place = lexicon.Facts.Places.LongestAt(tokens, at, out var places);
        var value = lexicon.Values.Values.LongestAt(tokens, at, out var values);
        var count = lexicon.Values.Counts.LongestAt(tokens, at, out var counts);
        var answer = lexicon.Values.YesNo.LongestAt(tokens, at, out var answers);
        var cue = lexicon.Cues.Cues.LongestAt(tokens, at, out var cues);
        var filler = lexicon.Filling.Fillers.LongestAt(tokens, at, out _);
        var longest = Math.Max(Math.Max(Math.Max(fact, place), Math.Max(value, count)), Math.Max(Math.Max(answer, cue), filler));
        if (longest == 0)
        {
            return new(at, at + 1) { Mark = MarkOf(tokens[at]) };
        }

        return new(at, at + longest)
        {
            Facts = fact == longest ? facts : [],
            Place = place == longest ? places[0] : null,
            Values = value == longest ? values : [],
            Counts = count == longest ? counts : [],
            YesNo = answer == longest ? answers[0] : null,
            IsFiller = filler == longest,
            Cues = cue == longest ? cues.Aggregate(Cue.None, (all, c) => all | c) : Cue.None,
            Mark = MarkOf(tokens[at]) is (ItemMark.And or ItemMark.Slash) and var mark && longest == 1 ? mark : filler == longest ? ItemMark.Plain : ItemMark.None,
        };
    }

    private ItemMark MarkOf(Token token)
    {
        if (lexicon.Numbers.Vocabulary.Is(token, NumberPart.And))
        {
            return ItemMark.And;
        }

        if (token.IsWord(lexicon.Signs.Slash))
        {
            return ItemMark.Slash;
        }

        if (token.Kind == TokenKind.Symbol)
        {
            return ItemMark.None;
        }

        return lexicon.Filling.Carriers.Contains(token.Word) ? ItemMark.Plain : token.Word < 0 ? ItemMark.Stranger : ItemMark.Other;
    }

    private InOut ToldInAndOut(IReadOnlyList<Token> tokens, int start, int end, Fact? expected)
    {
        var inner = expected;
        if (expected is null || !(lexicon.Facts.OutOf.ContainsKey(expected) || lexicon.Facts.OutOf.ContainsValue(expected)))
        {
            inner = null;
            for (var i = start; i < end && inner is null; i++)
            {
                if (lexicon.Facts.Names.LongestAt(tokens, i, out var names) > 0)
                {
                    inner = names.FirstOrDefault(n => lexicon.Facts.OutOf.ContainsKey(n.Fact))?.Fact;
                }
            }
        }
        else if (!lexicon.Facts.OutOf.ContainsKey(expected))
        {
            inner = lexicon.Facts.OutOf.First(p => p.Value == expected).Key;
        }

        return inner is null ? default : new(inner, lexicon.Facts.OutOf[inner]);
    }

    /// <summary>The pair of facts that "in" and "out" name in this message, if any.</summary>
    private readonly record struct InOut(Fact? In, Fact? Out)
    {
        public bool Told => In is not null;

        public Item? FactAt(IReadOnlyList<Token> tokens, int at, Lexicon lexicon)
        {
            if (In is null || Out is null)
            {
                return null;
            }

            if (lexicon.Facts.InWords.LongestAt(tokens, at, out _) is > 0 and var inner && IsTold(tokens, at + inner, lexicon))
            {
                return new(at, at + inner) { Facts = [new(In, false, [])] };
            }

            return lexicon.Facts.OutWords.LongestAt(tokens, at, out _) is > 0 and var outer && IsTold(tokens, at + outer, lexicon)
                ? new(at, at + outer) { Facts = [new(Out, false, [])] }
                : null;
        }

        // "in here", "out of the box" are everyday words: a side stands beside a number, a pause or the other side.
        private static bool IsTold(IReadOnlyList<Token> tokens, int after, Lexicon lexicon) =>
            after >= tokens.Count || tokens[after].Kind != TokenKind.Word
            || lexicon.Numbers.Vocabulary.Begins(tokens[after]) || lexicon.Numbers.Vocabulary.Is(tokens[after], NumberPart.And)
            || lexicon.Numbers.Minus.Contains(tokens[after].Word) || IsSide(tokens, after, lexicon);

        private static bool IsSide(IReadOnlyList<Token> tokens, int at, Lexicon lexicon) => lexicon.Facts.OutWords.LongestAt(tokens, at, out _) > 0;
    }
}
