using Assistant.Records.Log;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Storage.Postgres;

/// <summary>The same tables in PostgreSQL, with migrations of their own. Text sorts and compares by its bytes, as in SQLite.</summary>
public sealed class PostgresContext(DbContextOptions<PostgresContext> options) : RecordsContext(options)
{
    /// <summary>The program's name in the news it sends: its own news is none to it.</summary>
    internal string Sender { get; init; } = "";

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        base.ConfigureConventions(configurationBuilder);
        configurationBuilder.Properties<string>().UseCollation("C");
        configurationBuilder.Properties<DateTimeOffset>().UseCollation("C");
    }

    // Visits in the order of their ids, so that no two transactions wait for each other. Messages are looked up one by one by their whole key
    // (OFFSET keeps the planner from joining): a plan made while the table was small would read all of it long after.
    internal override async Task<ILogTables> LogTablesAsync(IReadOnlyList<Append> appends) => await TrackedTables.LoadAsync(
        this,
        appends,
        wanted => Visits.FromSql($"SELECT * FROM visits WHERE id = ANY ({wanted}) ORDER BY id FOR UPDATE"),
        (channels, ids) => Messages.FromSql(
            $"""
            SELECT found.* FROM unnest({channels}, {ids}) AS wanted (channel, id)
            CROSS JOIN LATERAL (SELECT * FROM messages WHERE channel = wanted.channel AND message_id = wanted.id OFFSET 0) AS found
            """));

    internal override bool HasManyWriters => true;

    internal override async Task<OutboxRow?> HoldFirstAsync(IReadOnlyList<long> outbox, DateTimeOffset doubtful, CancellationToken cancellation)
    {
        var (wanted, before) = (outbox.ToArray(), UtcText.Write(doubtful));
        return (await Outbox.FromSql(
            $"""
            SELECT * FROM outbox
            WHERE id = ANY ({wanted}) AND delivered_at IS NULL AND gave_up_at IS NULL AND (tried_at IS NULL OR tried_at <= {before})
            ORDER BY due, id LIMIT 1 FOR UPDATE SKIP LOCKED
            """).ToListAsync(cancellation)).FirstOrDefault();
    }

    internal override async Task<InboxRow?> HoldFirstAsync(IReadOnlyList<long> inbox, CancellationToken cancellation)
    {
        var wanted = inbox.ToArray();
        return (await Inbox.FromSql(
            $"SELECT * FROM inbox WHERE id = ANY ({wanted}) AND handled_at IS NULL ORDER BY sent_at, id LIMIT 1 FOR UPDATE SKIP LOCKED")
            .ToListAsync(cancellation)).FirstOrDefault();
    }

    internal override async Task<RoomRow?> HoldRoomAsync(string channel, string conversation, CancellationToken cancellation) => (await Rooms.FromSql(
        $"SELECT * FROM rooms WHERE channel = {channel} AND conversation = {conversation} FOR UPDATE SKIP LOCKED")
        .ToListAsync(cancellation)).FirstOrDefault();

    internal override async Task TellAsync(IReadOnlyList<VisitGrew> grown)
    {
        foreach (var payload in VisitNews.Pack(Sender, grown))
        {
            await Database.ExecuteSqlAsync($"SELECT pg_notify({VisitNews.Channel}, {payload})");
        }
    }

    internal override Task HoldAsync(string name, CancellationToken cancellation) =>
        Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock(hashtextextended({name}, 0))", cancellation);
}
