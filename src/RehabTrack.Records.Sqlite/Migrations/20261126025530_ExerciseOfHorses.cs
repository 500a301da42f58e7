using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace RehabTrack.Records.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class ExerciseOfHorses : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "ExerciseEntry",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    HorseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    RecordedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    RecordedOn = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    EnteredById = table.Column<Guid>(type: "TEXT", nullable: false),
                    OnBehalfOf = table.Column<string>(type: "TEXT", nullable: true),
                    ContentJson = table.Column<string>(type: "TEXT", nullable: false),
                    MoreJson = table.Column<string>(type: "TEXT", nullable: true),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ExerciseEntry", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ExerciseEntry_Horse_HorseId",
                        column: x => x.HorseId,
                        principalTable: "Horse",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "PermitLook",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    HorseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LastAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PermitLook", x => x.Id);
                    table.ForeignKey(
                        name: "FK_PermitLook_Horse_HorseId",
                        column: x => x.HorseId,
                        principalTable: "Horse",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "PlanDraft",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    HorseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    ContentJson = table.Column<string>(type: "TEXT", nullable: false),
                    WrittenById = table.Column<Guid>(type: "TEXT", nullable: false),
                    WrittenAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PlanDraft", x => x.Id);
                    table.ForeignKey(
                        name: "FK_PlanDraft_Horse_HorseId",
                        column: x => x.HorseId,
                        principalTable: "Horse",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Concern",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    HorseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    EntryId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    OpenedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    SeenById = table.Column<Guid>(type: "TEXT", nullable: true),
                    SeenAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Concern", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Concern_ExerciseEntry_EntryId",
                        column: x => x.EntryId,
                        principalTable: "ExerciseEntry",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Concern_Horse_HorseId",
                        column: x => x.HorseId,
                        principalTable: "Horse",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Decision",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    HorseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    EntryId = table.Column<Guid>(type: "TEXT", nullable: false),
                    GroundJson = table.Column<string>(type: "TEXT", nullable: false),
                    Disagreement = table.Column<string>(type: "TEXT", nullable: true),
                    ReleaseJson = table.Column<string>(type: "TEXT", nullable: true),
                    ReleasedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    ReleasedById = table.Column<Guid>(type: "TEXT", nullable: true),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Decision", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Decision_ExerciseEntry_EntryId",
                        column: x => x.EntryId,
                        principalTable: "ExerciseEntry",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Decision_Horse_HorseId",
                        column: x => x.HorseId,
                        principalTable: "Horse",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Concern_EntryId",
                table: "Concern",
                column: "EntryId",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Concern_HorseId",
                table: "Concern",
                column: "HorseId");

            migrationBuilder.CreateIndex(
                name: "IX_Decision_EntryId",
                table: "Decision",
                column: "EntryId",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Decision_HorseId",
                table: "Decision",
                column: "HorseId");

            migrationBuilder.CreateIndex(
                name: "IX_ExerciseEntry_HorseId_Number",
                table: "ExerciseEntry",
                columns: new[] { "HorseId", "Number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_PermitLook_HorseId_PersonId",
                table: "PermitLook",
                columns: new[] { "HorseId", "PersonId" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_PlanDraft_HorseId",
                table: "PlanDraft",
                column: "HorseId",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Concern");

            migrationBuilder.DropTable(
                name: "Decision");

            migrationBuilder.DropTable(
                name: "PermitLook");

            migrationBuilder.DropTable(
                name: "PlanDraft");

            migrationBuilder.DropTable(
                name: "ExerciseEntry");
        }
    }
}
