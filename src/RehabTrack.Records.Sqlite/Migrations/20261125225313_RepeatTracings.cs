using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace RehabTrack.Records.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class RepeatTracings : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "ErrorOriginsJson",
                table: "Practice",
                type: "TEXT",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "RepeatTracing",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Subject = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Size = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Measurer = table.Column<string>(type: "TEXT", nullable: true),
                    Value = table.Column<double>(type: "REAL", nullable: false),
                    EnteredById = table.Column<Guid>(type: "TEXT", nullable: false),
                    EnteredAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    PracticeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    ArchivedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RepeatTracing", x => x.Id);
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "RepeatTracing");

            migrationBuilder.DropColumn(
                name: "ErrorOriginsJson",
                table: "Practice");
        }
    }
}
