namespace Assistant.Trade.Refrigerants;

/// <summary>What a table covers, both ends included.</summary>
public readonly record struct TableRange<T>(T Lowest, T Highest)
    where T : IComparable<T>
{
    public bool Contains(T value) => value.CompareTo(Lowest) >= 0 && value.CompareTo(Highest) <= 0;
}
