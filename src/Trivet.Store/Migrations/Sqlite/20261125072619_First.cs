using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Trivet.Store.Migrations.Sqlite
{
    /// <inheritdoc />
    internal partial class First : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "cells",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    head = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_cells", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "drafts",
                columns: table => new
                {
                    cell_id = table.Column<string>(type: "TEXT", nullable: false),
                    person = table.Column<string>(type: "TEXT", nullable: false),
                    @base = table.Column<int>(name: "base", type: "INTEGER", nullable: false),
                    cursor = table.Column<int>(type: "INTEGER", nullable: false),
                    version = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_drafts", x => new { x.cell_id, x.person });
                    table.ForeignKey(
                        name: "FK_drafts_cells_cell_id",
                        column: x => x.cell_id,
                        principalTable: "cells",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "exports",
                columns: table => new
                {
                    cell_id = table.Column<string>(type: "TEXT", nullable: false),
                    path = table.Column<string>(type: "TEXT", nullable: false),
                    number = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_exports", x => new { x.cell_id, x.path });
                    table.ForeignKey(
                        name: "FK_exports_cells_cell_id",
                        column: x => x.cell_id,
                        principalTable: "cells",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "revisions",
                columns: table => new
                {
                    cell_id = table.Column<string>(type: "TEXT", nullable: false),
                    number = table.Column<int>(type: "INTEGER", nullable: false),
                    hash = table.Column<string>(type: "TEXT", nullable: false),
                    parent_hash = table.Column<string>(type: "TEXT", nullable: false),
                    text = table.Column<string>(type: "TEXT", nullable: false),
                    person = table.Column<string>(type: "TEXT", nullable: false),
                    ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    words = table.Column<string>(type: "TEXT", nullable: false),
                    restores = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_revisions", x => new { x.cell_id, x.number });
                    table.ForeignKey(
                        name: "FK_revisions_cells_cell_id",
                        column: x => x.cell_id,
                        principalTable: "cells",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "edits",
                columns: table => new
                {
                    cell_id = table.Column<string>(type: "TEXT", nullable: false),
                    person = table.Column<string>(type: "TEXT", nullable: false),
                    number = table.Column<int>(type: "INTEGER", nullable: false),
                    text = table.Column<string>(type: "TEXT", nullable: false),
                    ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    words = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_edits", x => new { x.cell_id, x.person, x.number });
                    table.ForeignKey(
                        name: "FK_edits_drafts_cell_id_person",
                        columns: x => new { x.cell_id, x.person },
                        principalTable: "drafts",
                        principalColumns: new[] { "cell_id", "person" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_revisions_hash",
                table: "revisions",
                column: "hash");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "edits");

            migrationBuilder.DropTable(
                name: "exports");

            migrationBuilder.DropTable(
                name: "revisions");

            migrationBuilder.DropTable(
                name: "drafts");

            migrationBuilder.DropTable(
                name: "cells");
        }
    }
}
