using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Assistant.Records.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(RecordsContext))]
    [Migration("20261125155924_ReminderGiven")]
    public partial class ReminderGiven : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "given_to",
                table: "reminders",
                type: "TEXT",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "given_to",
                table: "reminders");
        }
    }
}
