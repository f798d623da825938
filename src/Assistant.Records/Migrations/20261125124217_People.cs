using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Assistant.Records.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(RecordsContext))]
    [Migration("20261125124217_People")]
    public partial class People : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "enrolment_tries",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    address_digest = table.Column<string>(type: "TEXT", nullable: false),
                    at = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_enrolment_tries", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "firms",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_firms", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "stopped_addresses",
                columns: table => new
                {
                    address_digest = table.Column<string>(type: "TEXT", nullable: false),
                    at = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_stopped_addresses", x => x.address_digest);
                });

            migrationBuilder.CreateTable(
                name: "visit_members",
                columns: table => new
                {
                    visit_id = table.Column<string>(type: "TEXT", nullable: false),
                    person_id = table.Column<string>(type: "TEXT", nullable: false),
                    role = table.Column<string>(type: "TEXT", nullable: false),
                    since = table.Column<string>(type: "TEXT", nullable: false)
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
                name: "people",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    firm_id = table.Column<string>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    name_key = table.Column<string>(type: "TEXT", nullable: false),
                    roles = table.Column<int>(type: "INTEGER", nullable: false),
                    revoked_at = table.Column<string>(type: "TEXT", nullable: true)
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
                name: "visit_access",
                columns: table => new
                {
                    visit_id = table.Column<string>(type: "TEXT", nullable: false),
                    firm_id = table.Column<string>(type: "TEXT", nullable: true),
                    code = table.Column<string>(type: "TEXT", nullable: false)
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
                name: "channel_identities",
                columns: table => new
                {
                    channel = table.Column<string>(type: "TEXT", nullable: false),
                    address = table.Column<string>(type: "TEXT", nullable: false),
                    person_id = table.Column<string>(type: "TEXT", nullable: false),
                    bound_at = table.Column<string>(type: "TEXT", nullable: false),
                    revoked_at = table.Column<string>(type: "TEXT", nullable: true)
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
                    digest = table.Column<string>(type: "TEXT", nullable: false),
                    person_id = table.Column<string>(type: "TEXT", nullable: false),
                    expires = table.Column<string>(type: "TEXT", nullable: false)
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
                name: "IX_channel_identities_person_id",
                table: "channel_identities",
                column: "person_id");

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
                name: "IX_people_firm_id",
                table: "people",
                column: "firm_id");

            migrationBuilder.CreateIndex(
                name: "IX_people_name_key",
                table: "people",
                column: "name_key",
                unique: true);

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
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "channel_identities");

            migrationBuilder.DropTable(
                name: "enrolment_codes");

            migrationBuilder.DropTable(
                name: "enrolment_tries");

            migrationBuilder.DropTable(
                name: "stopped_addresses");

            migrationBuilder.DropTable(
                name: "visit_access");

            migrationBuilder.DropTable(
                name: "visit_members");

            migrationBuilder.DropTable(
                name: "people");

            migrationBuilder.DropTable(
                name: "firms");
        }
    }
}
