using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>What a room is called by ("freezer at 18"), where nothing of it was told yet.</summary>
internal static class RoomName
{
    /// <summary>The kind of the room by the word it is called by, where the message tells it in no other way.</summary>
    public static void Tell(List<Item> items, Observed observed)
    {
        if (!observed.Clear.Any(o => o.Fact == FactCatalogue.Application)
            && items.SelectMany(i => i.Values).FirstOrDefault(v => v.Fact == FactCatalogue.Application && v.Alone) is { } kind)
        {
            observed.Add(kind.Fact, kind.Value, false);
        }
    }
}
