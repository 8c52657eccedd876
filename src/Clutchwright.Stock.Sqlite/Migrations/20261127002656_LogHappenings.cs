using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Clutchwright.Stock.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class LogHappenings : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "CK_Changes_Kind",
                table: "Changes");

            migrationBuilder.CreateTable(
                name: "Happenings",
                columns: table => new
                {
                    HappeningId = table.Column<Guid>(type: "TEXT", nullable: false),
                    AnimalId = table.Column<Guid>(type: "TEXT", nullable: false),
                    MateId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Amount = table.Column<double>(type: "REAL", nullable: true),
                    Text = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false),
                    WithdrawnAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    When_Earliest = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    When_Latest = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    When_Words = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Happenings", x => x.HappeningId);
                    table.CheckConstraint("CK_Happenings_Amount", "\"Amount\" > 0");
                    table.CheckConstraint("CK_Happenings_Kind", "\"Kind\" IN ('Weighed', 'Fed', 'FoodRefused', 'Shed', 'Introduced', 'Locked', 'Separated', 'FolliclesMeasured', 'Ovulated', 'PreLayShed', 'Laid', 'Moved', 'Health', 'Noted')");
                    table.CheckConstraint("CK_Happenings_Mate", "\"MateId\" <> \"AnimalId\"");
                    table.CheckConstraint("CK_Happenings_When", "\"When_Earliest\" <= \"When_Latest\"");
                    table.ForeignKey(
                        name: "FK_Happenings_Animals_AnimalId",
                        column: x => x.AnimalId,
                        principalTable: "Animals",
                        principalColumn: "AnimalId",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Happenings_Animals_MateId",
                        column: x => x.MateId,
                        principalTable: "Animals",
                        principalColumn: "AnimalId",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.AddCheckConstraint(
                name: "CK_Changes_Kind",
                table: "Changes",
                sql: "\"Kind\" IN ('Animal', 'Statement', 'Season', 'Route', 'Happening')");

            migrationBuilder.CreateIndex(
                name: "IX_Happenings_AnimalId",
                table: "Happenings",
                column: "AnimalId");

            migrationBuilder.CreateIndex(
                name: "IX_Happenings_MateId",
                table: "Happenings",
                column: "MateId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Happenings");

            migrationBuilder.DropCheckConstraint(
                name: "CK_Changes_Kind",
                table: "Changes");

            migrationBuilder.AddCheckConstraint(
                name: "CK_Changes_Kind",
                table: "Changes",
                sql: "\"Kind\" IN ('Animal', 'Statement', 'Season', 'Route')");
        }
    }
}
