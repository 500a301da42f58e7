using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace RehabTrack.Records.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class OtherLimbAndFixedPoints : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<double>(
                name: "OtherLimbLigamentAreaCm2",
                table: "Reading",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "OtherLimbThicknessCm",
                table: "Reading",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "DivisionCm",
                table: "Examination",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Landmark",
                table: "Examination",
                type: "TEXT",
                maxLength: 64,
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "LateralInsertionCm",
                table: "Examination",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "MedialInsertionCm",
                table: "Examination",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "OriginCm",
                table: "Examination",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "HockToJointCm",
                table: "Case",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "OtherLimb",
                table: "Case",
                type: "TEXT",
                maxLength: 64,
                nullable: false,
                defaultValue: "");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "OtherLimbLigamentAreaCm2",
                table: "Reading");

            migrationBuilder.DropColumn(
                name: "OtherLimbThicknessCm",
                table: "Reading");

            migrationBuilder.DropColumn(
                name: "DivisionCm",
                table: "Examination");

            migrationBuilder.DropColumn(
                name: "Landmark",
                table: "Examination");

            migrationBuilder.DropColumn(
                name: "LateralInsertionCm",
                table: "Examination");

            migrationBuilder.DropColumn(
                name: "MedialInsertionCm",
                table: "Examination");

            migrationBuilder.DropColumn(
                name: "OriginCm",
                table: "Examination");

            migrationBuilder.DropColumn(
                name: "HockToJointCm",
                table: "Case");

            migrationBuilder.DropColumn(
                name: "OtherLimb",
                table: "Case");
        }
    }
}
