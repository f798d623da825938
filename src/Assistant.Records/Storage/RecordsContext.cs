using Assistant.Records.Log;
using Assistant.Records.Storage.Rows;
using Assistant.Records.Storage.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Conventions;

namespace Assistant.Records.Storage;

/// <summary>
/// The tables. The model holds nothing of one database alone: no column type, and no SQL that not both of them read. As it stands it is the context of SQLite, whose
/// transactions come one after another; what a database with many writers must be told besides is virtual here.
/// </summary>
public class RecordsContext : DbContext
{
    public RecordsContext(DbContextOptions<RecordsContext> options)
        : base(options)
    {
    }

    protected RecordsContext(DbContextOptions options)
        : base(options)
    {
    }

    private PreparedTables? tables;

    public DbSet<VisitRow> Visits => Set<VisitRow>();
    public DbSet<EventRow> Events => Set<EventRow>();
    public DbSet<MessageRow> Messages => Set<MessageRow>();
    public DbSet<ConversationRow> Conversations => Set<ConversationRow>();
    public DbSet<AssetRow> Assets => Set<AssetRow>();
    public DbSet<AssetFactRow> AssetFacts => Set<AssetFactRow>();
    public DbSet<PictureRow> Pictures => Set<PictureRow>();
    public DbSet<ReminderRow> Reminders => Set<ReminderRow>();
    public DbSet<OutboxRow> Outbox => Set<OutboxRow>();
    public DbSet<FirmRow> Firms => Set<FirmRow>();
    public DbSet<PersonRow> People => Set<PersonRow>();
    public DbSet<EnrolmentCodeRow> EnrolmentCodes => Set<EnrolmentCodeRow>();
    public DbSet<EnrolmentTryRow> EnrolmentTries => Set<EnrolmentTryRow>();
    public DbSet<ChannelIdentityRow> ChannelIdentities => Set<ChannelIdentityRow>();
    public DbSet<StoppedAddressRow> StoppedAddresses => Set<StoppedAddressRow>();
    public DbSet<VisitAccessRow> VisitAccess => Set<VisitAccessRow>();
    public DbSet<VisitMemberRow> VisitMembers => Set<VisitMemberRow>();
    public DbSet<InboxRow> Inbox => Set<InboxRow>();
    public DbSet<RoomRow> Rooms => Set<RoomRow>();

    /// <summary>The tables of the log in the transaction under way, for these appends: nobody else appends to their visits until it ends.</summary>
    internal virtual Task<ILogTables> LogTablesAsync(IReadOnlyList<Append> appends) => Task.FromResult<ILogTables>(tables ??= new PreparedTables(this));

    /// <summary>True where several programs write at once: what one works on is then held by a transaction for as long as that takes.</summary>
    internal virtual bool HasManyWriters => false;

    /// <summary>Of these replies the first that no one else takes just now, held until the transaction ends; null where there is none.</summary>
    /// <param name="doubtful">An attempt begun after this time is another's, or waits for its report.</param>
    internal virtual Task<OutboxRow?> HoldFirstAsync(IReadOnlyList<long> outbox, DateTimeOffset doubtful, CancellationToken cancellation) => Outbox
        .Where(o => outbox.Contains(o.Id) && o.DeliveredAt == null && o.GaveUpAt == null && (o.TriedAt == null || o.TriedAt <= doubtful))
        .OrderBy(o => o.Due).ThenBy(o => o.Id).FirstOrDefaultAsync(cancellation);

    /// <summary>Of these messages the first that no one else handles just now, held until the transaction ends; null where there is none.</summary>
    internal virtual Task<InboxRow?> HoldFirstAsync(IReadOnlyList<long> inbox, CancellationToken cancellation) => Inbox
        .Where(i => inbox.Contains(i.Id) && i.HandledAt == null)
        .OrderBy(i => i.SentAt).ThenBy(i => i.Id).FirstOrDefaultAsync(cancellation);

    /// <summary>The room of that name, held until the transaction ends; null where there is none or another works on it just now.</summary>
    internal virtual Task<RoomRow?> HoldRoomAsync(string channel, string conversation, CancellationToken cancellation) =>
        Rooms.FirstOrDefaultAsync(r => r.Channel == channel && r.Conversation == conversation, cancellation);

    /// <summary>Tells the other programs on these records which visits grew, once the transaction is committed.</summary>
    internal virtual Task TellAsync(IReadOnlyList<VisitGrew> grown) => Task.CompletedTask;

    /// <summary>Until the transaction ends nobody else is past this line under the same name.</summary>
    internal virtual Task HoldAsync(string name, CancellationToken cancellation) => Task.CompletedTask;

    public override void Dispose()
    {
        CloseTables();
        base.Dispose();
        GC.SuppressFinalize(this);
    }

    public override ValueTask DisposeAsync()
    {
        CloseTables();
        GC.SuppressFinalize(this);
        return base.DisposeAsync();
    }

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        ArgumentNullException.ThrowIfNull(configurationBuilder);
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcText>();

        // An index is a page more to be written with every row: each is asked for by name where something is looked up by it.
        configurationBuilder.Conventions.Remove<ForeignKeyIndexConvention>();
    }

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        ArgumentNullException.ThrowIfNull(modelBuilder);
        modelBuilder.Entity<VisitRow>(visit =>
        {
            visit.ToTable("visits").HasKey(v => v.Id);
            visit.HasIndex(v => v.AssetId);
            visit.HasOne<AssetRow>().WithMany().HasForeignKey(v => v.AssetId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<EventRow>(happened =>
        {
            happened.ToTable("events").HasKey(e => new { e.VisitId, e.Number });
            BelongsToVisit(happened, e => e.VisitId);

            // Every opening asks for the cylinders used last: found without reading all that was ever said.
            happened.HasIndex(e => e.Kind).HasFilter($"kind IN ('{EventJson.CylinderUsedKind}', '{EventJson.EventWithdrawnKind}')");
        });
        modelBuilder.Entity<MessageRow>(message =>
        {
            message.ToTable("messages").HasKey(m => new { m.Channel, m.MessageId });
            BelongsToVisit(message, m => m.VisitId);
        });
        modelBuilder.Entity<ConversationRow>(conversation =>
        {
            conversation.ToTable("conversations").HasKey(c => new { c.Channel, c.Conversation });

            // Two who put it on a visit of their own at the same time: the second one finds out.
            conversation.Property(c => c.VisitId).IsConcurrencyToken();
            conversation.HasIndex(c => c.VisitId);
            BelongsToVisit(conversation, c => c.VisitId);
        });
        modelBuilder.Entity<AssetRow>().ToTable("assets").HasKey(a => a.Id);
        modelBuilder.Entity<AssetFactRow>(fact =>
        {
            fact.ToTable("asset_facts").HasKey(f => new { f.AssetId, f.Sequence });
            fact.HasOne<AssetRow>().WithMany().HasForeignKey(f => f.AssetId).OnDelete(DeleteBehavior.Restrict);
            fact.HasIndex(f => new { f.VisitId, f.EventNumber });
        });
        modelBuilder.Entity<PictureRow>().ToTable("pictures").HasKey(p => p.Id);
        modelBuilder.Entity<ReminderRow>(reminder =>
        {
            reminder.ToTable("reminders").HasKey(r => new { r.VisitId, r.EventNumber });
            reminder.HasIndex(r => new { r.DoneAt, r.Due });
            BelongsToVisit(reminder, r => r.VisitId);
        });
        modelBuilder.Entity<OutboxRow>(outbox =>
        {
            outbox.ToTable("outbox").HasKey(o => o.Id);
            outbox.HasIndex(o => new { o.Channel, o.DeliveredAt, o.Due });
            outbox.HasIndex(o => new { o.Channel, o.MessageId }).IsUnique();
            outbox.HasIndex(o => new { o.Channel, o.Conversation, o.DeliveredAt });
        });
        modelBuilder.Entity<InboxRow>(inbox =>
        {
            inbox.ToTable("inbox").HasKey(i => i.Id);
            inbox.HasIndex(i => new { i.Channel, i.MessageId }).IsUnique();
            inbox.HasIndex(i => new { i.Channel, i.Digest }).IsUnique();
            inbox.HasIndex(i => new { i.Channel, i.HandledAt, i.SentAt });
        });
        modelBuilder.Entity<RoomRow>(room =>
        {
            room.ToTable("rooms").HasKey(r => new { r.Channel, r.Conversation });
            room.HasIndex(r => r.VisitId);
            BelongsToVisit(room, r => r.VisitId);
        });
        PeopleModel.Build(modelBuilder);
        SnakeCase(modelBuilder);
    }

    // The line they keep open goes back with the context.
    private void CloseTables()
    {
        tables?.Dispose();
        tables = null;
    }

    private static void BelongsToVisit<TRow>(
        Microsoft.EntityFrameworkCore.Metadata.Builders.EntityTypeBuilder<TRow> row,
        System.Linq.Expressions.Expression<Func<TRow, object?>> visitId)
        where TRow : class =>
        row.HasOne<VisitRow>().WithMany().HasForeignKey(visitId).OnDelete(DeleteBehavior.Restrict);

    private static void SnakeCase(ModelBuilder model)
    {
        foreach (var property in model.Model.GetEntityTypes().SelectMany(e => e.GetProperties()))
        {
            property.SetColumnName(System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(property.Name));
        }
    }
}
