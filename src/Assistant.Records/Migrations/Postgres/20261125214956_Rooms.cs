using Assistant.Records.Storage.Postgres;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Assistant.Records.Migrations.Postgres
{
    /// <inheritdoc />
    [DbContext(typeof(PostgresContext))]
    [Migration("20261125214956_Rooms")]
    public partial class Rooms : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<long>(
                name: "part_of",
                table: "outbox",
                type: "bigint",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "rooms",
                columns: table => new
                {
                    channel = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    conversation = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    reference = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    is_group = table.Column<bool>(type: "boolean", nullable: false),
                    can_edit = table.Column<bool>(type: "boolean", nullable: false),
                    visit_id = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    told = table.Column<int>(type: "integer", nullable: false),
                    summary_id = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    summary_digest = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    listened_from = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    listened_to = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    heard = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_rooms", x => new { x.channel, x.conversation });
                    table.ForeignKey(
                        name: "FK_rooms_visits_visit_id",
                        column: x => x.visit_id,
                        principalTable: "visits",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_rooms_visit_id",
                table: "rooms",
                column: "visit_id");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "rooms");

            migrationBuilder.DropColumn(
                name: "part_of",
                table: "outbox");
        }
    }
}
