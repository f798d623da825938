using Assistant.Records.Storage.Postgres;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Assistant.Records.Migrations.Postgres
{
    /// <inheritdoc />
    [DbContext(typeof(PostgresContext))]
    [Migration("20261126045037_LeanMessages")]
    public partial class LeanMessages : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_messages_visit_id",
                table: "messages");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateIndex(
                name: "IX_messages_visit_id",
                table: "messages",
                column: "visit_id");
        }
    }
}
