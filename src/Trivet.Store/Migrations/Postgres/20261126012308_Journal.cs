using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Trivet.Store.Migrations.Postgres
{
    /// <inheritdoc />
    internal partial class Journal : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "entries",
                columns: table => new
                {
                    device = table.Column<string>(type: "text", nullable: false),
                    sequence = table.Column<long>(type: "bigint", nullable: false),
                    hash = table.Column<string>(type: "text", nullable: false),
                    cell_id = table.Column<string>(type: "text", nullable: false),
                    ticks = table.Column<long>(type: "bigint", nullable: false),
                    text = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_entries", x => new { x.device, x.sequence, x.hash });
                    table.UniqueConstraint("AK_entries_hash", x => x.hash);
                });

            migrationBuilder.CreateTable(
                name: "photographs",
                columns: table => new
                {
                    hash = table.Column<string>(type: "text", nullable: false),
                    person = table.Column<string>(type: "text", nullable: false),
                    ticks = table.Column<long>(type: "bigint", nullable: false),
                    content = table.Column<byte[]>(type: "bytea", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_photographs", x => x.hash);
                });

            migrationBuilder.CreateTable(
                name: "receipts",
                columns: table => new
                {
                    number = table.Column<long>(type: "bigint", nullable: false),
                    entry_hash = table.Column<string>(type: "text", nullable: false),
                    previous_hash = table.Column<string>(type: "text", nullable: false),
                    hash = table.Column<string>(type: "text", nullable: false),
                    ticks = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_receipts", x => x.number);
                    table.ForeignKey(
                        name: "FK_receipts_entries_entry_hash",
                        column: x => x.entry_hash,
                        principalTable: "entries",
                        principalColumn: "hash",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_receipts_entry_hash",
                table: "receipts",
                column: "entry_hash",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "photographs");

            migrationBuilder.DropTable(
                name: "receipts");

            migrationBuilder.DropTable(
                name: "entries");
        }
    }
}
