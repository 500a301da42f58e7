using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace RehabTrack.Records.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class Care : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Care",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    HorseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    CaseId = table.Column<Guid>(type: "TEXT", nullable: true),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Until = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Grade = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    LamenessAaep = table.Column<int>(type: "INTEGER", nullable: true),
                    Context = table.Column<string>(type: "TEXT", nullable: true),
                    Words = table.Column<string>(type: "TEXT", nullable: true),
                    StandDownUntil = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    EnteredById = table.Column<Guid>(type: "TEXT", nullable: false),
                    EnteredAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    CorrectedById = table.Column<Guid>(type: "TEXT", nullable: true),
                    CorrectedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    StandDownById = table.Column<Guid>(type: "TEXT", nullable: true),
                    ArchivedReason = table.Column<string>(type: "TEXT", nullable: true),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Care", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Care_Case_CaseId",
                        column: x => x.CaseId,
                        principalTable: "Case",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Care_Horse_HorseId",
                        column: x => x.HorseId,
                        principalTable: "Horse",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Care_CaseId",
                table: "Care",
                column: "CaseId");

            migrationBuilder.CreateIndex(
                name: "IX_Care_HorseId",
                table: "Care",
                column: "HorseId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Care");
        }
    }
}
