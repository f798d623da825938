using System.Globalization;

namespace Assistant.Trade.Refrigerants;

/// <summary>A value was asked for that a refrigerant's table does not cover. The message says what was asked and what the range is.</summary>
public sealed class OutOfTableException : ArgumentException
{
    public OutOfTableException()
    {
    }

    public OutOfTableException(string message)
        : base(message)
    {
    }

    public OutOfTableException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    internal static OutOfTableException For(string designation, string quantity, double asked, double lowest, double highest, string unit) =>
        new(string.Create(
            CultureInfo.InvariantCulture,
            $"{designation}: {quantity} {asked:0.###} {unit} is outside the table, which runs from {lowest:0.###} to {highest:0.###} {unit}"));
}
