using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace RehabTrack.Records.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class FindingsAcknowledged : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Acknowledgement",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    HorseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    CaseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Finding = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    FindingKey = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Severity = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Weight = table.Column<int>(type: "INTEGER", nullable: false),
                    Since = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", nullable: false),
                    SaidById = table.Column<Guid>(type: "TEXT", nullable: false),
                    SaidAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Acknowledgement", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Acknowledgement_Case_CaseId",
                        column: x => x.CaseId,
                        principalTable: "Case",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Acknowledgement_Horse_HorseId",
                        column: x => x.HorseId,
                        principalTable: "Horse",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Acknowledgement_CaseId",
                table: "Acknowledgement",
                column: "CaseId");

            migrationBuilder.CreateIndex(
                name: "IX_Acknowledgement_HorseId",
                table: "Acknowledgement",
                column: "HorseId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Acknowledgement");
        }
    }
}
