using Assistant.Records.Log;
using Npgsql;

namespace Assistant.Records.Storage.Postgres;

/// <summary>The visits that conversations are on: the one question of every turn, so it goes past the model, and those asked at the same time go together.</summary>
internal sealed class CurrentVisits(IRecordsDatabase database, string connection)
{
    // Looked up one by one by their keys (OFFSET keeps the planner from joining): a plan made while the tables were small would read all of them long after.
    private const string Question =
        """
        SELECT wanted.place, v.id, v.version, v.opened_at, v.closed_at FROM unnest($1, $2) WITH ORDINALITY AS wanted (channel, conversation, place)
        CROSS JOIN LATERAL (SELECT visit_id FROM conversations WHERE channel = wanted.channel AND conversation = wanted.conversation OFFSET 0) AS c
        CROSS JOIN LATERAL (SELECT id, version, opened_at, closed_at FROM visits WHERE id = c.visit_id OFFSET 0) AS v
        """;

    private readonly Gathered<(string Channel, string Conversation), CurrentVisit?> gathered = new(asked => database.ExplainAsync(() => AskAsync(connection, asked)));

    public Task<CurrentVisit?> OfAsync(string channel, string conversation, CancellationToken cancellation) =>
        gathered.AskAsync((channel, conversation), cancellation);

    private static async Task<IReadOnlyList<CurrentVisit?>> AskAsync(string connection, IReadOnlyList<(string Channel, string Conversation)> asked)
    {
        await using var line = new NpgsqlConnection(connection);
        await line.OpenAsync();
        await using var command = new NpgsqlCommand(Question, line)
        {
            Parameters =
            {
                new NpgsqlParameter<string[]> { TypedValue = [.. asked.Select(a => a.Channel)] },
                new NpgsqlParameter<string[]> { TypedValue = [.. asked.Select(a => a.Conversation)] },
            },
        };
        await using var reader = await command.ExecuteReaderAsync();
        var visits = new CurrentVisit?[asked.Count];
        while (await reader.ReadAsync())
        {
            visits[reader.GetInt64(0) - 1] = new(
                reader.GetString(1), reader.GetInt32(2), UtcText.Read(reader.GetString(3)), reader.IsDBNull(4) ? null : UtcText.Read(reader.GetString(4)));
        }

        return visits;
    }
}
