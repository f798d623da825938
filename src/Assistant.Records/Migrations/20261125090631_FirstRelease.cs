using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Assistant.Records.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(RecordsContext))]
    [Migration("20261125090631_FirstRelease")]
    public partial class FirstRelease : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "assets",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    site = table.Column<string>(type: "TEXT", nullable: false),
                    unit = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_assets", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "outbox",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    channel = table.Column<string>(type: "TEXT", nullable: false),
                    conversation = table.Column<string>(type: "TEXT", nullable: false),
                    message_id = table.Column<string>(type: "TEXT", nullable: false),
                    reply = table.Column<string>(type: "TEXT", nullable: false),
                    due = table.Column<string>(type: "TEXT", nullable: false),
                    attempts = table.Column<int>(type: "INTEGER", nullable: false),
                    delivered_at = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_outbox", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "pictures",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    jpeg = table.Column<byte[]>(type: "BLOB", nullable: false),
                    width = table.Column<int>(type: "INTEGER", nullable: false),
                    height = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_pictures", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "asset_facts",
                columns: table => new
                {
                    asset_id = table.Column<string>(type: "TEXT", nullable: false),
                    sequence = table.Column<int>(type: "INTEGER", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    text = table.Column<string>(type: "TEXT", nullable: false),
                    at = table.Column<string>(type: "TEXT", nullable: false),
                    visit_id = table.Column<string>(type: "TEXT", nullable: true),
                    event_number = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_asset_facts", x => new { x.asset_id, x.sequence });
                    table.ForeignKey(
                        name: "FK_asset_facts_assets_asset_id",
                        column: x => x.asset_id,
                        principalTable: "assets",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "visits",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    site = table.Column<string>(type: "TEXT", nullable: false),
                    asset_id = table.Column<string>(type: "TEXT", nullable: true),
                    opened_at = table.Column<string>(type: "TEXT", nullable: false),
                    closed_at = table.Column<string>(type: "TEXT", nullable: true),
                    version = table.Column<int>(type: "INTEGER", nullable: false),
                    head_hash = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_visits", x => x.id);
                    table.ForeignKey(
                        name: "FK_visits_assets_asset_id",
                        column: x => x.asset_id,
                        principalTable: "assets",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "conversations",
                columns: table => new
                {
                    channel = table.Column<string>(type: "TEXT", nullable: false),
                    conversation = table.Column<string>(type: "TEXT", nullable: false),
                    visit_id = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_conversations", x => new { x.channel, x.conversation });
                    table.ForeignKey(
                        name: "FK_conversations_visits_visit_id",
                        column: x => x.visit_id,
                        principalTable: "visits",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "events",
                columns: table => new
                {
                    visit_id = table.Column<string>(type: "TEXT", nullable: false),
                    number = table.Column<int>(type: "INTEGER", nullable: false),
                    kind = table.Column<string>(type: "TEXT", nullable: false),
                    at = table.Column<string>(type: "TEXT", nullable: false),
                    body = table.Column<string>(type: "TEXT", nullable: false),
                    personal = table.Column<string>(type: "TEXT", nullable: true),
                    salt = table.Column<byte[]>(type: "BLOB", nullable: true),
                    personal_digest = table.Column<byte[]>(type: "BLOB", nullable: false),
                    prev_hash = table.Column<byte[]>(type: "BLOB", nullable: false),
                    hash = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_events", x => new { x.visit_id, x.number });
                    table.ForeignKey(
                        name: "FK_events_visits_visit_id",
                        column: x => x.visit_id,
                        principalTable: "visits",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "messages",
                columns: table => new
                {
                    channel = table.Column<string>(type: "TEXT", nullable: false),
                    message_id = table.Column<string>(type: "TEXT", nullable: false),
                    visit_id = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false),
                    reply = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_messages", x => new { x.channel, x.message_id });
                    table.ForeignKey(
                        name: "FK_messages_visits_visit_id",
                        column: x => x.visit_id,
                        principalTable: "visits",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "reminders",
                columns: table => new
                {
                    visit_id = table.Column<string>(type: "TEXT", nullable: false),
                    event_number = table.Column<int>(type: "INTEGER", nullable: false),
                    due = table.Column<string>(type: "TEXT", nullable: false),
                    done_at = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_reminders", x => new { x.visit_id, x.event_number });
                    table.ForeignKey(
                        name: "FK_reminders_visits_visit_id",
                        column: x => x.visit_id,
                        principalTable: "visits",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_asset_facts_visit_id_event_number",
                table: "asset_facts",
                columns: new[] { "visit_id", "event_number" });

            migrationBuilder.CreateIndex(
                name: "IX_conversations_visit_id",
                table: "conversations",
                column: "visit_id");

            migrationBuilder.CreateIndex(
                name: "IX_messages_visit_id",
                table: "messages",
                column: "visit_id");

            migrationBuilder.CreateIndex(
                name: "IX_outbox_channel_delivered_at_due",
                table: "outbox",
                columns: new[] { "channel", "delivered_at", "due" });

            migrationBuilder.CreateIndex(
                name: "IX_outbox_channel_message_id",
                table: "outbox",
                columns: new[] { "channel", "message_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_reminders_done_at_due",
                table: "reminders",
                columns: new[] { "done_at", "due" });

            migrationBuilder.CreateIndex(
                name: "IX_visits_asset_id",
                table: "visits",
                column: "asset_id");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "asset_facts");

            migrationBuilder.DropTable(
                name: "conversations");

            migrationBuilder.DropTable(
                name: "events");

            migrationBuilder.DropTable(
                name: "messages");

            migrationBuilder.DropTable(
                name: "outbox");

            migrationBuilder.DropTable(
                name: "pictures");

            migrationBuilder.DropTable(
                name: "reminders");

            migrationBuilder.DropTable(
                name: "visits");

            migrationBuilder.DropTable(
                name: "assets");
        }
    }
}
