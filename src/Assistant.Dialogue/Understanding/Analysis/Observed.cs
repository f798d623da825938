using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>What has been observed so far in a message, one value a fact; two that differ leave it open unless one corrects the other.</summary>
internal sealed class Observed
{
    private readonly List<Entry> entries = [];
    private int corrections;

    /// <summary>A value was said whose fact is open: "one fan is dead" where there are two sets of fans.</summary>
    public bool UnnamedValue { get; set; }

    /// <summary>A correction was heard: what is said from here on replaces.</summary>
    public void Corrected() => corrections++;

    /// <param name="value">Null where the word leaves it open, such as "407" or a denied value.</param>
    public void Add(Fact fact, string? value, bool denied)
    {
        var index = entries.FindIndex(e => e.Fact == fact);
        var entry = new Entry(fact, value, denied, corrections, false);
        if (index < 0)
        {
            entries.Add(entry);
            return;
        }

        var before = entries[index];
        if (before.IsAnswer || before.Denied || before.Value == value || before.Corrections < corrections)
        {
            entries[index] = denied && value is null ? before : entry;
        }
        else if (!denied)
        {
            entries[index] = before with { Value = null };
        }
    }

    /// <summary>A yes or no to what was asked: gives way to anything that says more.</summary>
    public void AddAnswer(Fact fact, bool answer)
    {
        var index = entries.FindIndex(e => e.Fact == fact);
        var value = answer ? "yes" : "no";
        if (index < 0)
        {
            entries.Add(new(fact, value, false, corrections, true));
        }
        else if (entries[index].IsAnswer)
        {
            entries[index] = entries[index].Value == value || entries[index].Corrections < corrections
                ? new(fact, value, false, corrections, true)
                : entries[index] with { Value = null };
        }
    }

    public bool Told(Fact fact) => entries.Exists(e => e.Fact == fact && !e.IsAnswer);

    /// <summary>Whether the fact was told by a word of its own.</summary>
    public bool Has(Fact fact, int from) => from >= 0 && entries.Exists(e => e.Fact == fact && e.Value == "cycling");

    public IEnumerable<Observation> Clear => entries.Where(e => e.Value is not null).Select(e => new Observation(e.Fact, e.Value!));

    public bool AnyOpen => entries.Exists(e => e.Value is null);

    public bool Any => entries.Count > 0;

    public bool Knows(Fact fact) => entries.Exists(e => e.Fact == fact);

    public void Remove(Fact fact) => entries.RemoveAll(e => e.Fact == fact);

    private readonly record struct Entry(Fact Fact, string? Value, bool Denied, int Corrections, bool IsAnswer);
}
