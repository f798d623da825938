using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Assistant.Records.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(RecordsContext))]
    [Migration("20261125214954_Rooms")]
    public partial class Rooms : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<long>(
                name: "part_of",
                table: "outbox",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "rooms",
                columns: table => new
                {
                    channel = table.Column<string>(type: "TEXT", nullable: false),
                    conversation = table.Column<string>(type: "TEXT", nullable: false),
                    reference = table.Column<string>(type: "TEXT", nullable: true),
                    is_group = table.Column<bool>(type: "INTEGER", nullable: false),
                    can_edit = table.Column<bool>(type: "INTEGER", nullable: false),
                    visit_id = table.Column<string>(type: "TEXT", nullable: true),
                    told = table.Column<int>(type: "INTEGER", nullable: false),
                    summary_id = table.Column<string>(type: "TEXT", nullable: true),
                    summary_digest = table.Column<string>(type: "TEXT", nullable: true),
                    listened_from = table.Column<string>(type: "TEXT", nullable: true),
                    listened_to = table.Column<string>(type: "TEXT", nullable: true),
                    heard = table.Column<string>(type: "TEXT", nullable: true)
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
