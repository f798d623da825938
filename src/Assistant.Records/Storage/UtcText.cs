using System.Globalization;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Assistant.Records.Storage;

/// <summary>A time as UTC text that sorts as it runs: the same in every database.</summary>
internal sealed class UtcText() : ValueConverter<DateTimeOffset, string>(time => Write(time), text => Read(text))
{
    private const string Format = "yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'";

    public static string Write(DateTimeOffset time) => time.UtcDateTime.ToString(Format, CultureInfo.InvariantCulture);

    public static DateTimeOffset Read(string text) =>
        DateTimeOffset.ParseExact(text, Format, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
}
