namespace Assistant.Channels.Xmpp;

/// <summary>Our own posts that rooms have sent back, the last so many.</summary>
internal sealed class SeenPosts(int most)
{
    private readonly HashSet<(Jid Room, string Id)> there = [];
    private readonly Queue<(Jid Room, string Id)> order = new();
    private readonly Lock guard = new();

    public bool Has(Jid room, string id)
    {
        lock (guard)
        {
            return there.Contains((room, id));
        }
    }

    public void Add(Jid room, string id)
    {
        lock (guard)
        {
            if (!there.Add((room, id)))
            {
                return;
            }

            order.Enqueue((room, id));
            if (order.Count > most)
            {
                there.Remove(order.Dequeue());
            }
        }
    }
}
