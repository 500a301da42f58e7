using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace RehabTrack.Records.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class IndexesWithoutPractice : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_Yard_PracticeId_FoldedName",
                table: "Yard");

            migrationBuilder.DropIndex(
                name: "IX_Person_PracticeId_FoldedName",
                table: "Person");

            migrationBuilder.DropIndex(
                name: "IX_Horse_PracticeId_FoldedName",
                table: "Horse");

            migrationBuilder.DropIndex(
                name: "IX_Horse_PracticeId_Microchip",
                table: "Horse");

            migrationBuilder.DropIndex(
                name: "IX_Examination_PracticeId_State",
                table: "Examination");

            migrationBuilder.DropIndex(
                name: "IX_CaseSummary_PracticeId_LastSigned",
                table: "CaseSummary");

            migrationBuilder.DropIndex(
                name: "IX_CaseSummary_PracticeId_LookRank_LastExamination",
                table: "CaseSummary");

            migrationBuilder.DropIndex(
                name: "IX_Case_PracticeId_ImportLabel",
                table: "Case");

            migrationBuilder.CreateIndex(
                name: "IX_Yard_FoldedName",
                table: "Yard",
                column: "FoldedName");

            migrationBuilder.CreateIndex(
                name: "IX_Person_FoldedName",
                table: "Person",
                column: "FoldedName");

            migrationBuilder.CreateIndex(
                name: "IX_Horse_FoldedName",
                table: "Horse",
                column: "FoldedName");

            migrationBuilder.CreateIndex(
                name: "IX_Horse_Microchip",
                table: "Horse",
                column: "Microchip");

            migrationBuilder.CreateIndex(
                name: "IX_Examination_State",
                table: "Examination",
                column: "State");

            migrationBuilder.CreateIndex(
                name: "IX_CaseSummary_LastSigned_LastExamination",
                table: "CaseSummary",
                columns: new[] { "LastSigned", "LastExamination" });

            migrationBuilder.CreateIndex(
                name: "IX_CaseSummary_LookRank_LastExamination",
                table: "CaseSummary",
                columns: new[] { "LookRank", "LastExamination" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_Yard_FoldedName",
                table: "Yard");

            migrationBuilder.DropIndex(
                name: "IX_Person_FoldedName",
                table: "Person");

            migrationBuilder.DropIndex(
                name: "IX_Horse_FoldedName",
                table: "Horse");

            migrationBuilder.DropIndex(
                name: "IX_Horse_Microchip",
                table: "Horse");

            migrationBuilder.DropIndex(
                name: "IX_Examination_State",
                table: "Examination");

            migrationBuilder.DropIndex(
                name: "IX_CaseSummary_LastSigned_LastExamination",
                table: "CaseSummary");

            migrationBuilder.DropIndex(
                name: "IX_CaseSummary_LookRank_LastExamination",
                table: "CaseSummary");

            migrationBuilder.CreateIndex(
                name: "IX_Yard_PracticeId_FoldedName",
                table: "Yard",
                columns: new[] { "PracticeId", "FoldedName" });

            migrationBuilder.CreateIndex(
                name: "IX_Person_PracticeId_FoldedName",
                table: "Person",
                columns: new[] { "PracticeId", "FoldedName" });

            migrationBuilder.CreateIndex(
                name: "IX_Horse_PracticeId_FoldedName",
                table: "Horse",
                columns: new[] { "PracticeId", "FoldedName" });

            migrationBuilder.CreateIndex(
                name: "IX_Horse_PracticeId_Microchip",
                table: "Horse",
                columns: new[] { "PracticeId", "Microchip" });

            migrationBuilder.CreateIndex(
                name: "IX_Examination_PracticeId_State",
                table: "Examination",
                columns: new[] { "PracticeId", "State" });

            migrationBuilder.CreateIndex(
                name: "IX_CaseSummary_PracticeId_LastSigned",
                table: "CaseSummary",
                columns: new[] { "PracticeId", "LastSigned" });

            migrationBuilder.CreateIndex(
                name: "IX_CaseSummary_PracticeId_LookRank_LastExamination",
                table: "CaseSummary",
                columns: new[] { "PracticeId", "LookRank", "LastExamination" });

            migrationBuilder.CreateIndex(
                name: "IX_Case_PracticeId_ImportLabel",
                table: "Case",
                columns: new[] { "PracticeId", "ImportLabel" });
        }
    }
}
