namespace Assistant.Trade.Regulations;

/// <summary>A rule file that cannot be used: which file, which key, and what is wrong.</summary>
public sealed class RegulationDataException : Exception
{
    public RegulationDataException()
        : this("?", "?", "unreadable")
    {
    }

    public RegulationDataException(string message)
        : this("?", "?", message)
    {
    }

    public RegulationDataException(string message, Exception innerException)
        : this("?", "?", message, innerException)
    {
    }

    public RegulationDataException(string file, string key, string what, Exception? innerException = null)
        : base($"{file}: {key}: {what}", innerException)
    {
        File = file;
        Key = key;
    }

    public string File { get; }

    /// <summary>The path of the key, such as $.repair.withinDays.</summary>
    public string Key { get; }
}
