using System.Globalization;
using System.Text;
using Assistant.Records.Log;
using Npgsql;

namespace Assistant.Records.Storage.Postgres;

/// <summary>
/// News between the programs on one database: which visits grew, sent with the commit. News that was missed while the line was down is
/// not sent again: whoever watches a visit looks at it now and then besides.
/// </summary>
internal static class VisitNews
{
    public const string Channel = "coldwalk_grew";

    /// <summary>PostgreSQL takes payloads of less than 8000 bytes.</summary>
    private const int Largest = 7_900;

    private static readonly TimeSpan BeforeTryingAgain = TimeSpan.FromSeconds(1);

    public static IEnumerable<string> Pack(string sender, IReadOnlyList<VisitGrew> grown)
    {
        var payload = new StringBuilder(sender);
        foreach (var visit in grown)
        {
            var line = string.Create(CultureInfo.InvariantCulture, $"\n{visit.Version} {visit.VisitId}");
            if (payload.Length + Encoding.UTF8.GetByteCount(line) > Largest)
            {
                yield return payload.ToString();
                payload.Length = sender.Length;
            }

            payload.Append(line);
        }

        if (payload.Length > sender.Length)
        {
            yield return payload.ToString();
        }
    }

    public static async Task ListenAsync(string connection, string sender, Action<VisitGrew> told, CancellationToken cancellation)
    {
        var settings = new NpgsqlConnectionStringBuilder(connection) { Pooling = false, KeepAlive = 10 }.ToString();
        while (!cancellation.IsCancellationRequested)
        {
            try
            {
                await using var line = new NpgsqlConnection(settings);
                line.Notification += (_, news) => Read(news.Payload, sender, told);
                await line.OpenAsync(cancellation);
                await using (var command = new NpgsqlCommand($"LISTEN {Channel}", line))
                {
                    await command.ExecuteNonQueryAsync(cancellation);
                }

                while (true)
                {
                    await line.WaitAsync(cancellation);
                }
            }
            catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
            {
                return;
            }
            catch (Exception failure) when (failure is NpgsqlException or IOException or TimeoutException)
            {
                await Task.Delay(BeforeTryingAgain, cancellation).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private static void Read(string payload, string sender, Action<VisitGrew> told)
    {
        if (payload.Split('\n') is not [var from, .. var lines] || from == sender)
        {
            return;
        }

        foreach (var line in lines)
        {
            var space = line.IndexOf(' ', StringComparison.Ordinal);
            if (space > 0 && int.TryParse(line.AsSpan(0, space), NumberStyles.None, CultureInfo.InvariantCulture, out var version))
            {
                told(new(line[(space + 1)..], version));
            }
        }
    }
}
