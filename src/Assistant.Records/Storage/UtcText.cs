using System.Globalization;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Assistant.Records.Storage;

/// <summary>A time as UTC text that sorts as it runs: the same in every database.</summary>
internal sealed class UtcText() : ValueConverter<DateTimeOffset, string>(time => Write(time), text => Read(text))
{
    /// <summary>2026-11-25T09:00:00.0000000Z: the round-trip form of a UTC time, which is written and read without going through a pattern.</summary>
    private const string Format = "O";

    public static string Write(DateTimeOffset time) => time.UtcDateTime.ToString(Format, CultureInfo.InvariantCulture);

    public static DateTimeOffset Read(string text) =>
        DateTimeOffset.ParseExact(text, Format, CultureInfo.InvariantCulture, DateTimeStyles.None);
}
