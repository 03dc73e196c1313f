using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Trivet.Store.Migrations.Sqlite
{
    /// <inheritdoc />
    internal partial class Access : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "devices",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    key_hash = table.Column<string>(type: "TEXT", nullable: false),
                    paired_by = table.Column<string>(type: "TEXT", nullable: false),
                    ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    ended = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_devices", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "persons",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    roles = table.Column<string>(type: "TEXT", nullable: false),
                    pin_hash = table.Column<string>(type: "TEXT", nullable: false),
                    failures = table.Column<int>(type: "INTEGER", nullable: false),
                    locked_until = table.Column<long>(type: "INTEGER", nullable: false),
                    ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    ended = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_persons", x => x.id);
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "devices");

            migrationBuilder.DropTable(
                name: "persons");
        }
    }
}
