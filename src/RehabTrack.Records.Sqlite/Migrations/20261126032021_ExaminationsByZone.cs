using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace RehabTrack.Records.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class ExaminationsByZone : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Zone",
                table: "Reading",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "ZoneScheme",
                table: "Reading",
                type: "TEXT",
                maxLength: 64,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "FirstZone",
                table: "LinkWord",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "SecondZone",
                table: "LinkWord",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Zones",
                table: "Examination",
                type: "TEXT",
                maxLength: 64,
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "ZoneLengthCm",
                table: "Case",
                type: "REAL",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "Zone",
                table: "Reading");

            migrationBuilder.DropColumn(
                name: "ZoneScheme",
                table: "Reading");

            migrationBuilder.DropColumn(
                name: "FirstZone",
                table: "LinkWord");

            migrationBuilder.DropColumn(
                name: "SecondZone",
                table: "LinkWord");

            migrationBuilder.DropColumn(
                name: "Zones",
                table: "Examination");

            migrationBuilder.DropColumn(
                name: "ZoneLengthCm",
                table: "Case");

        }
    }
}
