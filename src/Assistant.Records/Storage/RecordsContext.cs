using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Storage;

/// <summary>The tables. The model holds nothing of one database alone: no column type, no SQL.</summary>
public sealed class RecordsContext(DbContextOptions<RecordsContext> options) : DbContext(options)
{
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

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        ArgumentNullException.ThrowIfNull(configurationBuilder);
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcText>();
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
        });
        modelBuilder.Entity<MessageRow>(message =>
        {
            message.ToTable("messages").HasKey(m => new { m.Channel, m.MessageId });
            BelongsToVisit(message, m => m.VisitId);
        });
        modelBuilder.Entity<ConversationRow>(conversation =>
        {
            conversation.ToTable("conversations").HasKey(c => new { c.Channel, c.Conversation });
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
        PeopleModel.Build(modelBuilder);
        SnakeCase(modelBuilder);
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
