using System.Globalization;

namespace Assistant.Records.Reports.Sheet;

/// <summary>Times as a report writes them: ISO 8601 dates, the clock of the one who recorded.</summary>
/// <param name="opened">When the visit began; its day goes without saying.</param>
internal sealed class SheetTimes(DateTimeOffset opened)
{
    public static string Full(DateTimeOffset time) => time.ToString("yyyy-MM-dd HH:mm (zzz)", CultureInfo.InvariantCulture);

    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public string Short(DateTimeOffset time) =>
        time.ToString(time.Date == opened.Date ? "HH:mm" : "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
