using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace RehabTrack.Records.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class ShareLinks : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "ShareLink",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Relation = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    HorseId = table.Column<Guid>(type: "TEXT", nullable: true),
                    HorseLinkId = table.Column<Guid>(type: "TEXT", nullable: true),
                    ExpiresAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    LastSeenAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    OpenNotedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    RefusalNotedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    SecretHash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    MadeById = table.Column<Guid>(type: "TEXT", nullable: false),
                    MadeAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    RevokedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    RevokedById = table.Column<Guid>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ShareLink", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ShareLink_HorseLink_HorseLinkId",
                        column: x => x.HorseLinkId,
                        principalTable: "HorseLink",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_ShareLink_Horse_HorseId",
                        column: x => x.HorseId,
                        principalTable: "Horse",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_ShareLink_Person_PersonId",
                        column: x => x.PersonId,
                        principalTable: "Person",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_ShareLink_HorseId",
                table: "ShareLink",
                column: "HorseId");

            migrationBuilder.CreateIndex(
                name: "IX_ShareLink_HorseLinkId",
                table: "ShareLink",
                column: "HorseLinkId");

            migrationBuilder.CreateIndex(
                name: "IX_ShareLink_PersonId",
                table: "ShareLink",
                column: "PersonId");

            migrationBuilder.CreateIndex(
                name: "IX_ShareLink_SecretHash",
                table: "ShareLink",
                column: "SecretHash",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "ShareLink");
        }
    }
}
