using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Clutchwright.Stock.PostgreSql.Migrations
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
                    AnimalId = table.Column<Guid>(type: "uuid", nullable: false),
                    Tag = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false, collation: "C"),
                    Name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true, collation: "C"),
                    Sex = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: true, collation: "C"),
                    SireId = table.Column<Guid>(type: "uuid", nullable: true),
                    DamId = table.Column<Guid>(type: "uuid", nullable: true),
                    Status = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false, collation: "C"),
                    MassGrams = table.Column<double>(type: "double precision", nullable: true),
                    Notes = table.Column<string>(type: "character varying(20000)", maxLength: 20000, nullable: false, collation: "C"),
                    BinnedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Version = table.Column<Guid>(type: "uuid", nullable: false),
                    TagKey = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    TagOrder = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    SearchText = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Hatched_Earliest = table.Column<DateOnly>(type: "date", nullable: true),
                    Hatched_Latest = table.Column<DateOnly>(type: "date", nullable: true),
                    Hatched_Words = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true, collation: "C")
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
                    DeedId = table.Column<long>(type: "bigint", nullable: false),
                    When = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Who = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false, collation: "C"),
                    Words = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false, collation: "C"),
                    Undoes = table.Column<long>(type: "bigint", nullable: true)
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
                name: "Routes",
                columns: table => new
                {
                    AdoptedRouteId = table.Column<Guid>(type: "uuid", nullable: false),
                    Want = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: false, collation: "C"),
                    FirstYear = table.Column<int>(type: "integer", nullable: false),
                    LastYear = table.Column<int>(type: "integer", nullable: false),
                    Asked = table.Column<string>(type: "character varying(200000)", maxLength: 200000, nullable: false, collation: "C"),
                    Steps = table.Column<string>(type: "character varying(200000)", maxLength: 200000, nullable: false, collation: "C"),
                    AdoptedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Ending = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: true, collation: "C"),
                    Version = table.Column<Guid>(type: "uuid", nullable: false)
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
                    KeptSeasonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Year = table.Column<int>(type: "integer", nullable: false),
                    Goals = table.Column<string>(type: "character varying(200000)", maxLength: 200000, nullable: false, collation: "C"),
                    Version = table.Column<Guid>(type: "uuid", nullable: false),
                    Animals = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Seasons", x => x.KeptSeasonId);
                    table.CheckConstraint("CK_Seasons_Year", "\"Year\" BETWEEN 1900 AND 2200");
                });

            migrationBuilder.CreateTable(
                name: "Happenings",
                columns: table => new
                {
                    HappeningId = table.Column<Guid>(type: "uuid", nullable: false),
                    AnimalId = table.Column<Guid>(type: "uuid", nullable: false),
                    MateId = table.Column<Guid>(type: "uuid", nullable: true),
                    Kind = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false, collation: "C"),
                    Amount = table.Column<double>(type: "double precision", nullable: true),
                    Text = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: false, collation: "C"),
                    WithdrawnAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Version = table.Column<Guid>(type: "uuid", nullable: false),
                    When_Earliest = table.Column<DateOnly>(type: "date", nullable: false),
                    When_Latest = table.Column<DateOnly>(type: "date", nullable: false),
                    When_Words = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false, collation: "C")
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

            migrationBuilder.CreateTable(
                name: "PossibleSires",
                columns: table => new
                {
                    OffspringId = table.Column<Guid>(type: "uuid", nullable: false),
                    SireId = table.Column<Guid>(type: "uuid", nullable: false)
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
                    StatementId = table.Column<Guid>(type: "uuid", nullable: false),
                    AnimalId = table.Column<Guid>(type: "uuid", nullable: false),
                    Kind = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false, collation: "C"),
                    Text = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: false, collation: "C"),
                    Confidence = table.Column<double>(type: "double precision", nullable: false),
                    By = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true, collation: "C"),
                    WithdrawnAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    TestFound = table.Column<bool>(type: "boolean", nullable: true),
                    TestSensitivity = table.Column<double>(type: "double precision", nullable: true),
                    TestSpecificity = table.Column<double>(type: "double precision", nullable: true),
                    SearchText = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Version = table.Column<Guid>(type: "uuid", nullable: false),
                    When_Earliest = table.Column<DateOnly>(type: "date", nullable: true),
                    When_Latest = table.Column<DateOnly>(type: "date", nullable: true),
                    When_Words = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true, collation: "C")
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
                    DeedId = table.Column<long>(type: "bigint", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Kind = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false, collation: "C"),
                    RecordId = table.Column<Guid>(type: "uuid", nullable: false),
                    Label = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Before = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    After = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Changes", x => new { x.DeedId, x.Number });
                    table.CheckConstraint("CK_Changes_Kind", "\"Kind\" IN ('Animal', 'Statement', 'Season', 'Route', 'Happening')");
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
                name: "IX_Happenings_AnimalId",
                table: "Happenings",
                column: "AnimalId");

            migrationBuilder.CreateIndex(
                name: "IX_Happenings_MateId",
                table: "Happenings",
                column: "MateId");

            migrationBuilder.CreateIndex(
                name: "IX_PossibleSires_SireId",
                table: "PossibleSires",
                column: "SireId");

            migrationBuilder.CreateIndex(
                name: "IX_Seasons_Year",
                table: "Seasons",
                column: "Year",
                unique: true);

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
                name: "Happenings");

            migrationBuilder.DropTable(
                name: "PossibleSires");

            migrationBuilder.DropTable(
                name: "Routes");

            migrationBuilder.DropTable(
                name: "Seasons");

            migrationBuilder.DropTable(
                name: "Statements");

            migrationBuilder.DropTable(
                name: "Deeds");

            migrationBuilder.DropTable(
                name: "Animals");
        }
    }
}
