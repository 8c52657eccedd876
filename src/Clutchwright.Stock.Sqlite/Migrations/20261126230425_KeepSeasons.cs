using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Clutchwright.Stock.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class KeepSeasons : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "CK_Changes_Kind",
                table: "Changes");

            migrationBuilder.CreateTable(
                name: "Routes",
                columns: table => new
                {
                    AdoptedRouteId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Want = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false),
                    FirstYear = table.Column<int>(type: "INTEGER", nullable: false),
                    LastYear = table.Column<int>(type: "INTEGER", nullable: false),
                    Asked = table.Column<string>(type: "TEXT", maxLength: 200000, nullable: false),
                    Steps = table.Column<string>(type: "TEXT", maxLength: 200000, nullable: false),
                    AdoptedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Ending = table.Column<string>(type: "TEXT", maxLength: 20, nullable: true),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Routes", x => x.AdoptedRouteId);
                    table.CheckConstraint("CK_Routes_Ending", "\"Ending\" IN ('Reached', 'GivenUp')");
                    table.CheckConstraint("CK_Routes_Years", "\"FirstYear\" <= \"LastYear\"");
                });

            migrationBuilder.CreateTable(
                name: "Seasons",
                columns: table => new
                {
                    KeptSeasonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Year = table.Column<int>(type: "INTEGER", nullable: false),
                    Goals = table.Column<string>(type: "TEXT", maxLength: 200000, nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    Animals = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Seasons", x => x.KeptSeasonId);
                    table.CheckConstraint("CK_Seasons_Year", "\"Year\" BETWEEN 1900 AND 2200");
                });

            migrationBuilder.AddCheckConstraint(
                name: "CK_Changes_Kind",
                table: "Changes",
                sql: "\"Kind\" IN ('Animal', 'Statement', 'Season', 'Route')");

            migrationBuilder.CreateIndex(
                name: "IX_Seasons_Year",
                table: "Seasons",
                column: "Year",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Routes");

            migrationBuilder.DropTable(
                name: "Seasons");

            migrationBuilder.DropCheckConstraint(
                name: "CK_Changes_Kind",
                table: "Changes");

            migrationBuilder.AddCheckConstraint(
                name: "CK_Changes_Kind",
                table: "Changes",
                sql: "\"Kind\" IN ('Animal', 'Statement')");
        }
    }
}
