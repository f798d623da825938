using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Assistant.Records.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(RecordsContext))]
    [Migration("20261125213642_CylinderIndex")]
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
