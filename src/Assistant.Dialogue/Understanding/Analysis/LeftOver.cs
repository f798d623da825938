namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Finds what a message says beside what was taken from it, so that it can be named and not passed over.</summary>
internal static class LeftOver
{
    /// <summary>From so many values on a message is a list, in which every word is meant to say something.</summary>
    private const int List = 3;

    private const int MostNamed = 4;

    /// <summary>Each stretch with a number that nothing names, as it was written; in a list the words the lexicon does not know, too.</summary>
    public static IReadOnlyList<string> Of(Message message, List<Item> items, ReadingCollector readings, int values)
    {
        var found = new List<string>();
        for (var i = 0; i < items.Count && found.Count < MostNamed; i++)
        {
            var first = i;
            var numbers = 0;
            while (i < items.Count && (IsOpen(items[i], readings) || items[i].Mark == ItemMark.Stranger))
            {
                numbers += IsOpen(items[i], readings) ? 1 : 0;
                i++;
            }

            if (i > first && (numbers > 0 || values >= List))
            {
                var named = numbers > 0 && first > 0 && items[first - 1].NamesQuantity ? first - 1 : first;
                found.Add(message.Text[message.Tokens[items[named].Start].Start..message.Tokens[items[i - 1].End - 1].End].Trim());
            }
        }

        return found;
    }

    private static bool IsOpen(Item item, ReadingCollector readings) => item.IsPassedOver || item is { Number: { } number, Mark: ItemMark.None } && !readings.Took(number);
}
