namespace Assistant.Records.Conversations;

/// <summary>One at a time for each key; different keys do not wait for each other. Holds nothing for keys that nobody waits on.</summary>
internal sealed class KeyedGate
{
    private readonly Dictionary<string, Entry> entries = new(StringComparer.Ordinal);

    public async Task<IDisposable> EnterAsync(string key, CancellationToken cancellation)
    {
        Entry entry;
        lock (entries)
        {
            entry = entries.TryGetValue(key, out var found) ? found : entries[key] = new();
            entry.Holders++;
        }

        try
        {
            await entry.Turn.WaitAsync(cancellation);
            return new Pass(this, key, entry);
        }
        catch
        {
            Leave(key, entry);
            throw;
        }
    }

    private void Leave(string key, Entry entry)
    {
        lock (entries)
        {
            if (--entry.Holders == 0)
            {
                entries.Remove(key);
            }
        }
    }

    private sealed class Entry
    {
        public SemaphoreSlim Turn { get; } = new(1, 1);

        public int Holders { get; set; }
    }

    private sealed class Pass(KeyedGate gate, string key, Entry entry) : IDisposable
    {
        public void Dispose()
        {
            entry.Turn.Release();
            gate.Leave(key, entry);
        }
    }
}
