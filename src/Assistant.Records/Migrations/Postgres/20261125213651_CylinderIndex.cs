using Assistant.Records.Storage.Postgres;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Assistant.Records.Migrations.Postgres
{
    /// <inheritdoc />
    [DbContext(typeof(PostgresContext))]
    [Migration("20261125213651_CylinderIndex")]
    public partial class CylinderIndex : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateIndex(
                name: "IX_events_kind",
                table: "events",
                column: "kind",
                filter: "kind IN ('cylinder-used', 'event-withdrawn')");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_events_kind",
                table: "events");
        }
    }
}
