namespace Assistant.Trade.Refrigerants;

/// <summary>A data file is not as it must be; the message begins with file and line.</summary>
public sealed class TableFormatException : FormatException
{
    public TableFormatException()
    {
    }

    public TableFormatException(string message)
        : base(message)
    {
    }

    public TableFormatException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    internal static TableFormatException At(string file, int line, string what) => new($"{file}:{line}: {what}");
}
