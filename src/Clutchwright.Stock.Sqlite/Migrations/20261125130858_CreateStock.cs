using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Clutchwright.Stock.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class CreateStock : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Animals",
                columns: table => new
                {
                    AnimalId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Tag = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 200, nullable: true),
                    Sex = table.Column<string>(type: "TEXT", maxLength: 20, nullable: true),
                    SireId = table.Column<Guid>(type: "TEXT", nullable: true),
                    DamId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Status = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    MassGrams = table.Column<double>(type: "REAL", nullable: true),
                    Notes = table.Column<string>(type: "TEXT", maxLength: 20000, nullable: false),
                    BinnedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    TagKey = table.Column<string>(type: "TEXT", nullable: false),
                    TagOrder = table.Column<string>(type: "TEXT", nullable: false),
                    SearchText = table.Column<string>(type: "TEXT", nullable: false),
                    Hatched_Earliest = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Hatched_Latest = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Hatched_Words = table.Column<string>(type: "TEXT", maxLength: 200, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Animals", x => x.AnimalId);
                    table.CheckConstraint("CK_Animals_Hatched", "(\"Hatched_Earliest\" IS NULL AND \"Hatched_Latest\" IS NULL AND \"Hatched_Words\" IS NULL) OR (\"Hatched_Earliest\" IS NOT NULL AND \"Hatched_Latest\" IS NOT NULL AND \"Hatched_Words\" IS NOT NULL AND \"Hatched_Earliest\" <= \"Hatched_Latest\")");
                    table.CheckConstraint("CK_Animals_MassGrams", "\"MassGrams\" > 0");
                    table.CheckConstraint("CK_Animals_Parents", "\"SireId\" <> \"AnimalId\" AND \"DamId\" <> \"AnimalId\" AND \"SireId\" <> \"DamId\"");
                    table.CheckConstraint("CK_Animals_Sex", "\"Sex\" IN ('Female', 'Male')");
                    table.CheckConstraint("CK_Animals_Status", "\"Status\" IN ('Kept', 'HeldBack', 'ForSale', 'Sold', 'Given', 'Died', 'Reference')");
                    table.CheckConstraint("CK_Animals_Tag", "length(\"Tag\") BETWEEN 1 AND 60");
                    table.ForeignKey(
                        name: "FK_Animals_Animals_DamId",
                        column: x => x.DamId,
                        principalTable: "Animals",
                        principalColumn: "AnimalId",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Animals_Animals_SireId",
                        column: x => x.SireId,
                        principalTable: "Animals",
                        principalColumn: "AnimalId",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Deeds",
                columns: table => new
                {
                    DeedId = table.Column<long>(type: "INTEGER", nullable: false),
                    When = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Who = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Words = table.Column<string>(type: "TEXT", maxLength: 500, nullable: false),
                    Undoes = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Deeds", x => x.DeedId);
                    table.ForeignKey(
                        name: "FK_Deeds_Deeds_Undoes",
                        column: x => x.Undoes,
                        principalTable: "Deeds",
                        principalColumn: "DeedId",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "PossibleSires",
                columns: table => new
                {
                    OffspringId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SireId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PossibleSires", x => new { x.OffspringId, x.SireId });
                    table.CheckConstraint("CK_PossibleSires_Self", "\"SireId\" <> \"OffspringId\"");
                    table.ForeignKey(
                        name: "FK_PossibleSires_Animals_OffspringId",
                        column: x => x.OffspringId,
                        principalTable: "Animals",
                        principalColumn: "AnimalId",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_PossibleSires_Animals_SireId",
                        column: x => x.SireId,
                        principalTable: "Animals",
                        principalColumn: "AnimalId",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Statements",
                columns: table => new
                {
                    StatementId = table.Column<Guid>(type: "TEXT", nullable: false),
                    AnimalId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Text = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false),
                    Confidence = table.Column<double>(type: "REAL", nullable: false),
                    By = table.Column<string>(type: "TEXT", maxLength: 200, nullable: true),
                    WithdrawnAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    TestFound = table.Column<bool>(type: "INTEGER", nullable: true),
                    TestSensitivity = table.Column<double>(type: "REAL", nullable: true),
                    TestSpecificity = table.Column<double>(type: "REAL", nullable: true),
                    SearchText = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false),
                    When_Earliest = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    When_Latest = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    When_Words = table.Column<string>(type: "TEXT", maxLength: 200, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Statements", x => x.StatementId);
                    table.CheckConstraint("CK_Statements_Confidence", "\"Confidence\" > 0 AND \"Confidence\" <= 1");
                    table.CheckConstraint("CK_Statements_Kind", "\"Kind\" IN ('Seen', 'LookedAtNormal', 'Told', 'DnaTest', 'ProvenByBreeding', 'RuledOut')");
                    table.CheckConstraint("CK_Statements_Test", "(\"Kind\" = 'DnaTest') = (\"TestFound\" IS NOT NULL) AND (\"TestFound\" IS NULL) = (\"TestSensitivity\" IS NULL) AND (\"TestFound\" IS NULL) = (\"TestSpecificity\" IS NULL)");
                    table.CheckConstraint("CK_Statements_TestRates", "\"TestSensitivity\" > 0 AND \"TestSensitivity\" <= 1 AND \"TestSpecificity\" > 0 AND \"TestSpecificity\" <= 1");
                    table.CheckConstraint("CK_Statements_Text", "(\"Kind\" = 'LookedAtNormal') = (length(\"Text\") = 0)");
                    table.CheckConstraint("CK_Statements_When", "(\"When_Earliest\" IS NULL AND \"When_Latest\" IS NULL AND \"When_Words\" IS NULL) OR (\"When_Earliest\" IS NOT NULL AND \"When_Latest\" IS NOT NULL AND \"When_Words\" IS NOT NULL AND \"When_Earliest\" <= \"When_Latest\")");
                    table.ForeignKey(
                        name: "FK_Statements_Animals_AnimalId",
                        column: x => x.AnimalId,
                        principalTable: "Animals",
                        principalColumn: "AnimalId",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Changes",
                columns: table => new
                {
                    DeedId = table.Column<long>(type: "INTEGER", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    RecordId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Label = table.Column<string>(type: "TEXT", nullable: false),
                    Before = table.Column<string>(type: "TEXT", nullable: true),
                    After = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Changes", x => new { x.DeedId, x.Number });
                    table.CheckConstraint("CK_Changes_Kind", "\"Kind\" IN ('Animal', 'Statement')");
                    table.CheckConstraint("CK_Changes_Something", "\"Before\" IS NOT NULL OR \"After\" IS NOT NULL");
                    table.ForeignKey(
                        name: "FK_Changes_Deeds_DeedId",
                        column: x => x.DeedId,
                        principalTable: "Deeds",
                        principalColumn: "DeedId",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Animals_DamId",
                table: "Animals",
                column: "DamId");

            migrationBuilder.CreateIndex(
                name: "IX_Animals_SireId",
                table: "Animals",
                column: "SireId");

            migrationBuilder.CreateIndex(
                name: "IX_Animals_TagKey",
                table: "Animals",
                column: "TagKey",
                unique: true,
                filter: "\"BinnedAt\" IS NULL");

            migrationBuilder.CreateIndex(
                name: "IX_Animals_TagOrder",
                table: "Animals",
                column: "TagOrder");

            migrationBuilder.CreateIndex(
                name: "IX_Changes_RecordId_DeedId",
                table: "Changes",
                columns: new[] { "RecordId", "DeedId" });

            migrationBuilder.CreateIndex(
                name: "IX_Deeds_Undoes",
                table: "Deeds",
                column: "Undoes");

            migrationBuilder.CreateIndex(
                name: "IX_PossibleSires_SireId",
                table: "PossibleSires",
                column: "SireId");

            migrationBuilder.CreateIndex(
                name: "IX_Statements_AnimalId",
                table: "Statements",
                column: "AnimalId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Changes");

            migrationBuilder.DropTable(
                name: "PossibleSires");

            migrationBuilder.DropTable(
                name: "Statements");

            migrationBuilder.DropTable(
                name: "Deeds");

            migrationBuilder.DropTable(
                name: "Animals");
        }
    }
}
