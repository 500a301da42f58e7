using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace RehabTrack.Records.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "AppliedCommand",
                columns: table => new
                {
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    CommandId = table.Column<Guid>(type: "TEXT", nullable: false),
                    UseCase = table.Column<string>(type: "TEXT", nullable: false),
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    ResultJson = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AppliedCommand", x => new { x.PracticeId, x.CommandId });
                });

            migrationBuilder.CreateTable(
                name: "Change",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    CommandId = table.Column<Guid>(type: "TEXT", nullable: false),
                    UseCase = table.Column<string>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    RecordId = table.Column<Guid>(type: "TEXT", nullable: false),
                    CaseId = table.Column<Guid>(type: "TEXT", nullable: true),
                    BeforeJson = table.Column<string>(type: "TEXT", nullable: true),
                    AfterJson = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Change", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "ImportFile",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    FileName = table.Column<string>(type: "TEXT", nullable: false),
                    Content = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Checksum = table.Column<string>(type: "TEXT", nullable: false),
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    HandedInAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    AppliedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ImportFile", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "ImportMapping",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Fingerprint = table.Column<string>(type: "TEXT", nullable: false),
                    MappingJson = table.Column<string>(type: "TEXT", nullable: false),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ImportMapping", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Person",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    FoldedName = table.Column<string>(type: "TEXT", nullable: false),
                    Role = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Phone = table.Column<string>(type: "TEXT", nullable: true),
                    Mail = table.Column<string>(type: "TEXT", nullable: true),
                    Language = table.Column<string>(type: "TEXT", nullable: false),
                    CanSignIn = table.Column<bool>(type: "INTEGER", nullable: false),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Person", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Practice",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Phone = table.Column<string>(type: "TEXT", nullable: true),
                    TimeZone = table.Column<string>(type: "TEXT", nullable: false),
                    Language = table.Column<string>(type: "TEXT", nullable: false),
                    RecheckIntervalDays = table.Column<int>(type: "INTEGER", nullable: true),
                    ShowChangeWhileEntering = table.Column<bool>(type: "INTEGER", nullable: false),
                    SettingsJson = table.Column<string>(type: "TEXT", nullable: true),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Practice", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Yard",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    FoldedName = table.Column<string>(type: "TEXT", nullable: false),
                    Phone = table.Column<string>(type: "TEXT", nullable: true),
                    Address = table.Column<string>(type: "TEXT", nullable: true),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Yard", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Horse",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    FoldedName = table.Column<string>(type: "TEXT", nullable: false),
                    Search = table.Column<string>(type: "TEXT", nullable: false),
                    Microchip = table.Column<string>(type: "TEXT", nullable: true),
                    BirthYear = table.Column<int>(type: "INTEGER", nullable: true),
                    BirthDate = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Sex = table.Column<string>(type: "TEXT", maxLength: 64, nullable: true),
                    Use = table.Column<string>(type: "TEXT", nullable: true),
                    Markings = table.Column<string>(type: "TEXT", nullable: true),
                    YardId = table.Column<Guid>(type: "TEXT", nullable: true),
                    PhotoId = table.Column<Guid>(type: "TEXT", nullable: true),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Horse", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Horse_Yard_YardId",
                        column: x => x.YardId,
                        principalTable: "Yard",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Case",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    HorseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Limb = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Structure = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Landmark = table.Column<string>(type: "TEXT", maxLength: 64, nullable: true),
                    Onset = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Reinjury = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    FirstDiagnosis = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Diagnosis = table.Column<string>(type: "TEXT", nullable: true),
                    TargetWork = table.Column<string>(type: "TEXT", nullable: true),
                    TargetFraction = table.Column<double>(type: "REAL", nullable: true),
                    ResponsibleVetId = table.Column<Guid>(type: "TEXT", nullable: true),
                    ImportLabel = table.Column<string>(type: "TEXT", nullable: true),
                    ClosedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Case", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Case_Horse_HorseId",
                        column: x => x.HorseId,
                        principalTable: "Horse",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Case_Person_ResponsibleVetId",
                        column: x => x.ResponsibleVetId,
                        principalTable: "Person",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "HorseLink",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    HorseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Relation = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Until = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_HorseLink", x => x.Id);
                    table.ForeignKey(
                        name: "FK_HorseLink_Horse_HorseId",
                        column: x => x.HorseId,
                        principalTable: "Horse",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_HorseLink_Person_PersonId",
                        column: x => x.PersonId,
                        principalTable: "Person",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "HorsePhoto",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    HorseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    ContentType = table.Column<string>(type: "TEXT", nullable: false),
                    Content = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Checksum = table.Column<string>(type: "TEXT", nullable: false),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_HorsePhoto", x => x.Id);
                    table.ForeignKey(
                        name: "FK_HorsePhoto_Horse_HorseId",
                        column: x => x.HorseId,
                        principalTable: "Horse",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "CaseSummary",
                columns: table => new
                {
                    CaseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    EngineVersion = table.Column<string>(type: "TEXT", nullable: false),
                    SettingsHash = table.Column<string>(type: "TEXT", nullable: false),
                    SettingsJson = table.Column<string>(type: "TEXT", nullable: false),
                    InputHash = table.Column<string>(type: "TEXT", nullable: false),
                    AsOf = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    ComputedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Verdict = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Reason = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Measure = table.Column<string>(type: "TEXT", maxLength: 64, nullable: true),
                    RatePercentPer60Days = table.Column<double>(type: "REAL", nullable: true),
                    Lower95Percent = table.Column<double>(type: "REAL", nullable: true),
                    Upper95Percent = table.Column<double>(type: "REAL", nullable: true),
                    ExaminationCount = table.Column<int>(type: "INTEGER", nullable: false),
                    FirstExamination = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    LastExamination = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    LastSigned = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    RedCount = table.Column<int>(type: "INTEGER", nullable: false),
                    AmberCount = table.Column<int>(type: "INTEGER", nullable: false),
                    NoteCount = table.Column<int>(type: "INTEGER", nullable: false),
                    LookRank = table.Column<int>(type: "INTEGER", nullable: false),
                    FindingsJson = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CaseSummary", x => x.CaseId);
                    table.ForeignKey(
                        name: "FK_CaseSummary_Case_CaseId",
                        column: x => x.CaseId,
                        principalTable: "Case",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Examination",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    CaseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: true),
                    Stance = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    State = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Examiner = table.Column<string>(type: "TEXT", nullable: true),
                    Transducer = table.Column<string>(type: "TEXT", nullable: true),
                    Standoff = table.Column<bool>(type: "INTEGER", nullable: true),
                    Coupling = table.Column<string>(type: "TEXT", maxLength: 64, nullable: true),
                    Clipped = table.Column<bool>(type: "INTEGER", nullable: true),
                    Note = table.Column<string>(type: "TEXT", nullable: true),
                    OutsidePractice = table.Column<string>(type: "TEXT", nullable: true),
                    Typed = table.Column<string>(type: "TEXT", nullable: true),
                    SignedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    SignedById = table.Column<Guid>(type: "TEXT", nullable: true),
                    EnteredById = table.Column<Guid>(type: "TEXT", nullable: true),
                    WrittenAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Examination", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Examination_Case_CaseId",
                        column: x => x.CaseId,
                        principalTable: "Case",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "LinkWord",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    CaseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    FirstExaminationId = table.Column<Guid>(type: "TEXT", nullable: false),
                    FirstPath = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    FirstLevelCm = table.Column<double>(type: "REAL", nullable: false),
                    SecondExaminationId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SecondPath = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    SecondLevelCm = table.Column<double>(type: "REAL", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", nullable: false),
                    SaidById = table.Column<Guid>(type: "TEXT", nullable: false),
                    SaidAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    WithdrawnById = table.Column<Guid>(type: "TEXT", nullable: true),
                    WithdrawnAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    WithdrawnReason = table.Column<string>(type: "TEXT", nullable: true),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LinkWord", x => x.Id);
                    table.ForeignKey(
                        name: "FK_LinkWord_Case_CaseId",
                        column: x => x.CaseId,
                        principalTable: "Case",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ExaminationVersion",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    ExaminationId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", nullable: true),
                    ContentJson = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ExaminationVersion", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ExaminationVersion_Examination_ExaminationId",
                        column: x => x.ExaminationId,
                        principalTable: "Examination",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Reading",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    ExaminationId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Position = table.Column<int>(type: "INTEGER", nullable: false),
                    Part = table.Column<string>(type: "TEXT", maxLength: 64, nullable: true),
                    LevelCm = table.Column<double>(type: "REAL", nullable: true),
                    Plane = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Lesion = table.Column<string>(type: "TEXT", nullable: true),
                    Role = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    LigamentAreaCm2 = table.Column<double>(type: "REAL", nullable: true),
                    LesionAreaCm2 = table.Column<double>(type: "REAL", nullable: true),
                    LesionIsDiffuse = table.Column<bool>(type: "INTEGER", nullable: false),
                    LesionPercent = table.Column<double>(type: "REAL", nullable: true),
                    ThicknessCm = table.Column<double>(type: "REAL", nullable: true),
                    WidthCm = table.Column<double>(type: "REAL", nullable: true),
                    EchogenicityScale = table.Column<string>(type: "TEXT", nullable: false),
                    EchogenicityGrade = table.Column<double>(type: "REAL", nullable: true),
                    FibreAlignmentScale = table.Column<string>(type: "TEXT", nullable: false),
                    FibreAlignmentGrade = table.Column<double>(type: "REAL", nullable: true),
                    Measurer = table.Column<string>(type: "TEXT", nullable: true),
                    Repeat = table.Column<string>(type: "TEXT", nullable: true),
                    Note = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Reading", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Reading_Examination_ExaminationId",
                        column: x => x.ExaminationId,
                        principalTable: "Examination",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Case_HorseId",
                table: "Case",
                column: "HorseId");

            migrationBuilder.CreateIndex(
                name: "IX_Case_PracticeId_ImportLabel",
                table: "Case",
                columns: new[] { "PracticeId", "ImportLabel" });

            migrationBuilder.CreateIndex(
                name: "IX_Case_ResponsibleVetId",
                table: "Case",
                column: "ResponsibleVetId");

            migrationBuilder.CreateIndex(
                name: "IX_CaseSummary_PracticeId_LastSigned",
                table: "CaseSummary",
                columns: new[] { "PracticeId", "LastSigned" });

            migrationBuilder.CreateIndex(
                name: "IX_CaseSummary_PracticeId_LookRank_LastExamination",
                table: "CaseSummary",
                columns: new[] { "PracticeId", "LookRank", "LastExamination" });

            migrationBuilder.CreateIndex(
                name: "IX_Change_CaseId_At",
                table: "Change",
                columns: new[] { "CaseId", "At" });

            migrationBuilder.CreateIndex(
                name: "IX_Change_RecordId",
                table: "Change",
                column: "RecordId");

            migrationBuilder.CreateIndex(
                name: "IX_Examination_CaseId_Date",
                table: "Examination",
                columns: new[] { "CaseId", "Date" });

            migrationBuilder.CreateIndex(
                name: "IX_Examination_PracticeId_State",
                table: "Examination",
                columns: new[] { "PracticeId", "State" });

            migrationBuilder.CreateIndex(
                name: "IX_ExaminationVersion_ExaminationId_Number",
                table: "ExaminationVersion",
                columns: new[] { "ExaminationId", "Number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Horse_PracticeId_FoldedName",
                table: "Horse",
                columns: new[] { "PracticeId", "FoldedName" });

            migrationBuilder.CreateIndex(
                name: "IX_Horse_PracticeId_Microchip",
                table: "Horse",
                columns: new[] { "PracticeId", "Microchip" });

            migrationBuilder.CreateIndex(
                name: "IX_Horse_YardId",
                table: "Horse",
                column: "YardId");

            migrationBuilder.CreateIndex(
                name: "IX_HorseLink_HorseId",
                table: "HorseLink",
                column: "HorseId");

            migrationBuilder.CreateIndex(
                name: "IX_HorseLink_PersonId",
                table: "HorseLink",
                column: "PersonId");

            migrationBuilder.CreateIndex(
                name: "IX_HorsePhoto_HorseId",
                table: "HorsePhoto",
                column: "HorseId");

            migrationBuilder.CreateIndex(
                name: "IX_ImportMapping_PracticeId_Fingerprint",
                table: "ImportMapping",
                columns: new[] { "PracticeId", "Fingerprint" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_LinkWord_CaseId",
                table: "LinkWord",
                column: "CaseId");

            migrationBuilder.CreateIndex(
                name: "IX_Person_PracticeId_FoldedName",
                table: "Person",
                columns: new[] { "PracticeId", "FoldedName" });

            migrationBuilder.CreateIndex(
                name: "IX_Reading_ExaminationId",
                table: "Reading",
                column: "ExaminationId");

            migrationBuilder.CreateIndex(
                name: "IX_Yard_PracticeId_FoldedName",
                table: "Yard",
                columns: new[] { "PracticeId", "FoldedName" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "AppliedCommand");

            migrationBuilder.DropTable(
                name: "CaseSummary");

            migrationBuilder.DropTable(
                name: "Change");

            migrationBuilder.DropTable(
                name: "ExaminationVersion");

            migrationBuilder.DropTable(
                name: "HorseLink");

            migrationBuilder.DropTable(
                name: "HorsePhoto");

            migrationBuilder.DropTable(
                name: "ImportFile");

            migrationBuilder.DropTable(
                name: "ImportMapping");

            migrationBuilder.DropTable(
                name: "LinkWord");

            migrationBuilder.DropTable(
                name: "Practice");

            migrationBuilder.DropTable(
                name: "Reading");

            migrationBuilder.DropTable(
                name: "Examination");

            migrationBuilder.DropTable(
                name: "Case");

            migrationBuilder.DropTable(
                name: "Horse");

            migrationBuilder.DropTable(
                name: "Person");

            migrationBuilder.DropTable(
                name: "Yard");
        }
    }
}
