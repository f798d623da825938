using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Assistant.Records.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(RecordsContext))]
    [Migration("20261125130000_TextDelivery")]
    public partial class TextDelivery : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(name: "gave_up_at", table: "outbox", type: "TEXT", nullable: true);
            migrationBuilder.AddColumn<string>(name: "reported_at", table: "outbox", type: "TEXT", nullable: true);
            migrationBuilder.AddColumn<string>(name: "tried_at", table: "outbox", type: "TEXT", nullable: true);
            migrationBuilder.AddColumn<string>(name: "trouble", table: "outbox", type: "TEXT", nullable: true);
            migrationBuilder.AddColumn<int>(name: "version", table: "outbox", type: "INTEGER", nullable: true);
            migrationBuilder.AddColumn<string>(name: "visit_id", table: "outbox", type: "TEXT", nullable: true);
            migrationBuilder.CreateIndex(
                name: "IX_outbox_channel_conversation_delivered_at",
                table: "outbox",
                columns: new[] { "channel", "conversation", "delivered_at" });

            migrationBuilder.CreateTable(
                name: "inbox",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    channel = table.Column<string>(type: "TEXT", nullable: false),
                    message_id = table.Column<string>(type: "TEXT", nullable: false),
                    conversation = table.Column<string>(type: "TEXT", nullable: false),
                    text = table.Column<string>(type: "TEXT", nullable: false),
                    sent_at = table.Column<string>(type: "TEXT", nullable: false),
                    received_at = table.Column<string>(type: "TEXT", nullable: false),
                    digest = table.Column<string>(type: "TEXT", nullable: false),
                    handled_at = table.Column<string>(type: "TEXT", nullable: true),
                },
                constraints: table => table.PrimaryKey("PK_inbox", x => x.id));

            migrationBuilder.CreateIndex(name: "IX_inbox_channel_digest", table: "inbox", columns: new[] { "channel", "digest" }, unique: true);
            migrationBuilder.CreateIndex(name: "IX_inbox_channel_message_id", table: "inbox", columns: new[] { "channel", "message_id" }, unique: true);
            migrationBuilder.CreateIndex(name: "IX_inbox_channel_handled_at_sent_at", table: "inbox", columns: new[] { "channel", "handled_at", "sent_at" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "inbox");
            migrationBuilder.DropIndex(name: "IX_outbox_channel_conversation_delivered_at", table: "outbox");
            migrationBuilder.DropColumn(name: "gave_up_at", table: "outbox");
            migrationBuilder.DropColumn(name: "reported_at", table: "outbox");
            migrationBuilder.DropColumn(name: "tried_at", table: "outbox");
            migrationBuilder.DropColumn(name: "trouble", table: "outbox");
            migrationBuilder.DropColumn(name: "version", table: "outbox");
            migrationBuilder.DropColumn(name: "visit_id", table: "outbox");
        }
    }
}
