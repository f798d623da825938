using Assistant.Records.Storage.Postgres;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Assistant.Records.Migrations.Postgres
{
    /// <inheritdoc />
    [DbContext(typeof(PostgresContext))]
    [Migration("20261125155944_FirstRelease")]
    public partial class FirstRelease : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "assets",
                columns: table => new
                {
                    id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    site = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    unit = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_assets", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "enrolment_tries",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    address_digest = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    at = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_enrolment_tries", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "firms",
                columns: table => new
                {
                    id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_firms", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "inbox",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    channel = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    message_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    conversation = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    text = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    sent_at = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    received_at = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    digest = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    handled_at = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_inbox", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "outbox",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    channel = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    conversation = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    message_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    reply = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    due = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    attempts = table.Column<int>(type: "integer", nullable: false),
                    tried_at = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    delivered_at = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    reported_at = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    gave_up_at = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    trouble = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    visit_id = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    version = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_outbox", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "pictures",
                columns: table => new
                {
                    id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    jpeg = table.Column<byte[]>(type: "bytea", nullable: false),
                    width = table.Column<int>(type: "integer", nullable: false),
                    height = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_pictures", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "stopped_addresses",
                columns: table => new
                {
                    address_digest = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    at = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_stopped_addresses", x => x.address_digest);
                });

            migrationBuilder.CreateTable(
                name: "asset_facts",
                columns: table => new
                {
                    asset_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    sequence = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    text = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    at = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    visit_id = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    event_number = table.Column<int>(type: "integer", nullable: true)
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
                    id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    site = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    asset_id = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    opened_at = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    closed_at = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    version = table.Column<int>(type: "integer", nullable: false),
                    head_hash = table.Column<byte[]>(type: "bytea", nullable: false)
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
                name: "people",
                columns: table => new
                {
                    id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    firm_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    name_key = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    roles = table.Column<int>(type: "integer", nullable: false),
                    revoked_at = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_people", x => x.id);
                    table.ForeignKey(
                        name: "FK_people_firms_firm_id",
                        column: x => x.firm_id,
                        principalTable: "firms",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "conversations",
                columns: table => new
                {
                    channel = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    conversation = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    visit_id = table.Column<string>(type: "text", nullable: false, collation: "C")
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
                    visit_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    number = table.Column<int>(type: "integer", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    at = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    body = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    personal = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    salt = table.Column<byte[]>(type: "bytea", nullable: true),
                    personal_digest = table.Column<byte[]>(type: "bytea", nullable: false),
                    prev_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    hash = table.Column<byte[]>(type: "bytea", nullable: false)
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
                    channel = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    message_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    visit_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    version = table.Column<int>(type: "integer", nullable: false),
                    reply = table.Column<string>(type: "text", nullable: false, collation: "C")
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
                    visit_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    event_number = table.Column<int>(type: "integer", nullable: false),
                    due = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    done_at = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    given_to = table.Column<string>(type: "text", nullable: true, collation: "C")
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

            migrationBuilder.CreateTable(
                name: "visit_access",
                columns: table => new
                {
                    visit_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    firm_id = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    code = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_visit_access", x => x.visit_id);
                    table.ForeignKey(
                        name: "FK_visit_access_firms_firm_id",
                        column: x => x.firm_id,
                        principalTable: "firms",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_visit_access_visits_visit_id",
                        column: x => x.visit_id,
                        principalTable: "visits",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "visit_members",
                columns: table => new
                {
                    visit_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    person_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    role = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    since = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_visit_members", x => new { x.visit_id, x.person_id });
                    table.ForeignKey(
                        name: "FK_visit_members_visits_visit_id",
                        column: x => x.visit_id,
                        principalTable: "visits",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "channel_identities",
                columns: table => new
                {
                    channel = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    address = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    person_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    bound_at = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    revoked_at = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_channel_identities", x => new { x.channel, x.address });
                    table.ForeignKey(
                        name: "FK_channel_identities_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "enrolment_codes",
                columns: table => new
                {
                    digest = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    person_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    expires = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_enrolment_codes", x => x.digest);
                    table.ForeignKey(
                        name: "FK_enrolment_codes_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_asset_facts_visit_id_event_number",
                table: "asset_facts",
                columns: new[] { "visit_id", "event_number" });

            migrationBuilder.CreateIndex(
                name: "IX_channel_identities_person_id",
                table: "channel_identities",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "IX_conversations_visit_id",
                table: "conversations",
                column: "visit_id");

            migrationBuilder.CreateIndex(
                name: "IX_enrolment_codes_person_id",
                table: "enrolment_codes",
                column: "person_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_enrolment_tries_at",
                table: "enrolment_tries",
                column: "at");

            migrationBuilder.CreateIndex(
                name: "IX_firms_name",
                table: "firms",
                column: "name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_inbox_channel_digest",
                table: "inbox",
                columns: new[] { "channel", "digest" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_inbox_channel_handled_at_sent_at",
                table: "inbox",
                columns: new[] { "channel", "handled_at", "sent_at" });

            migrationBuilder.CreateIndex(
                name: "IX_inbox_channel_message_id",
                table: "inbox",
                columns: new[] { "channel", "message_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_messages_visit_id",
                table: "messages",
                column: "visit_id");

            migrationBuilder.CreateIndex(
                name: "IX_outbox_channel_conversation_delivered_at",
                table: "outbox",
                columns: new[] { "channel", "conversation", "delivered_at" });

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
                name: "IX_people_firm_id",
                table: "people",
                column: "firm_id");

            migrationBuilder.CreateIndex(
                name: "IX_people_name_key",
                table: "people",
                column: "name_key",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_reminders_done_at_due",
                table: "reminders",
                columns: new[] { "done_at", "due" });

            migrationBuilder.CreateIndex(
                name: "IX_visit_access_code",
                table: "visit_access",
                column: "code");

            migrationBuilder.CreateIndex(
                name: "IX_visit_access_firm_id",
                table: "visit_access",
                column: "firm_id");

            migrationBuilder.CreateIndex(
                name: "IX_visit_members_person_id",
                table: "visit_members",
                column: "person_id");

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
                name: "channel_identities");

            migrationBuilder.DropTable(
                name: "conversations");

            migrationBuilder.DropTable(
                name: "enrolment_codes");

            migrationBuilder.DropTable(
                name: "enrolment_tries");

            migrationBuilder.DropTable(
                name: "events");

            migrationBuilder.DropTable(
                name: "inbox");

            migrationBuilder.DropTable(
                name: "messages");

            migrationBuilder.DropTable(
                name: "outbox");

            migrationBuilder.DropTable(
                name: "pictures");

            migrationBuilder.DropTable(
                name: "reminders");

            migrationBuilder.DropTable(
                name: "stopped_addresses");

            migrationBuilder.DropTable(
                name: "visit_access");

            migrationBuilder.DropTable(
                name: "visit_members");

            migrationBuilder.DropTable(
                name: "people");

            migrationBuilder.DropTable(
                name: "visits");

            migrationBuilder.DropTable(
                name: "firms");

            migrationBuilder.DropTable(
                name: "assets");
        }
    }
}
