using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace RehabTrack.Records.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class TrailOfHashes : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<byte[]>(
                name: "BodyHash",
                table: "Change",
                type: "BLOB",
                nullable: true);

            migrationBuilder.AddColumn<byte[]>(
                name: "Hash",
                table: "Change",
                type: "BLOB",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "Number",
                table: "Change",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<byte[]>(
                name: "PreviousHash",
                table: "Change",
                type: "BLOB",
                nullable: true);

            migrationBuilder.AddColumn<byte[]>(
                name: "Salt",
                table: "Change",
                type: "BLOB",
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "IX_Change_PersonId_Number",
                table: "Change",
                columns: new[] { "PersonId", "Number" });

            migrationBuilder.CreateIndex(
                name: "IX_Change_PracticeId_Number",
                table: "Change",
                columns: new[] { "PracticeId", "Number" },
                unique: true,
                filter: "\"Number\" IS NOT NULL");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_Change_PersonId_Number",
                table: "Change");

            migrationBuilder.DropIndex(
                name: "IX_Change_PracticeId_Number",
                table: "Change");

            migrationBuilder.DropColumn(
                name: "BodyHash",
                table: "Change");

            migrationBuilder.DropColumn(
                name: "Hash",
                table: "Change");

            migrationBuilder.DropColumn(
                name: "Number",
                table: "Change");

            migrationBuilder.DropColumn(
                name: "PreviousHash",
                table: "Change");

            migrationBuilder.DropColumn(
                name: "Salt",
                table: "Change");
        }
    }
}
